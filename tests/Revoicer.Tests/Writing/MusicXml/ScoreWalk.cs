using System.Globalization;
using System.Xml.Linq;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.Writing.MusicXml;

/// <summary>
/// A reader of scores written against the MusicXML 4.0 schema's own words, independent of the library: places by duration,
/// backup and forward. What does not add up fails the test: voices that do not fill their bar, values that are not their
/// duration.
/// </summary>
internal sealed class ScoreWalk
{
    private static readonly string[] Types =
        ["breve", "whole", "half", "quarter", "eighth", "16th", "32nd", "64th", "128th", "256th", "512th", "1024th"];

    private readonly List<WalkedBar> _bars = [];
    private long _divisions = 1;
    private string _time = "";

    private ScoreWalk(XElement score)
    {
        foreach (var measure in score.Element("part")!.Elements("measure"))
        {
            Walk(measure);
        }
    }

    /// <summary>The bars as they stand.</summary>
    public IReadOnlyList<WalkedBar> Written => _bars;

    public static ScoreWalk Through(byte[] file)
    {
        using var stream = new MemoryStream(file);
        return new ScoreWalk(XDocument.Load(stream).Root!);
    }

    /// <summary>The bars as heard, with where each begins: repeats and endings as every player follows them.</summary>
    public IReadOnlyList<(WalkedBar Bar, Beats Start)> Heard()
    {
        var heard = new List<(WalkedBar, Beats)>();
        var (from, pass, at) = (0, 1, Beats.Zero);
        for (var i = 0; i < _bars.Count;)
        {
            var bar = _bars[i];
            from = bar.Opens && i > from ? Begin(i) : from;
            if (bar.Ending.Length > 0 && !bar.Ending.Contains(pass))
            {
                while (!_bars[i].EndsEnding)
                {
                    i++;
                }

                i++;
                continue;
            }

            heard.Add((bar, at));
            at += bar.Length;
            var ending = _bars.Take(i + 1).LastOrDefault(b => b.Ending.Length > 0)?.Ending ?? [];
            var again = bar.Closes > 0 && (bar.EndsEnding ? ending.Contains(pass) : pass < bar.Closes);
            if (again)
            {
                pass++;
                i = from;
            }
            else
            {
                from = bar.Closes > 0 || bar.EndsEnding ? Begin(i + 1) : from;
                i++;
            }
        }

        return heard;

        int Begin(int bar)
        {
            pass = 1;
            return bar;
        }
    }

    private void Walk(XElement measure)
    {
        var (at, last) = (Beats.Zero, Beats.Zero);
        var voices = new Dictionary<(int, int), Beats>();
        var strokes = new List<WalkedStroke>();
        var chords = new List<(Beats, string)>();
        var tempi = new List<(Beats, double)>();
        _divisions = (long?)measure.Element("attributes")?.Element("divisions") ?? _divisions;
        _time = measure.Element("attributes")?.Element("time") is { } time ? $"{time.Element("beats")!.Value}/{time.Element("beat-type")!.Value}" : _time;
        foreach (var element in measure.Elements())
        {
            switch (element.Name.LocalName)
            {
                case "note":
                    last = element.Element("chord") is null ? at : last;
                    Note(element, last, strokes);
                    at = last + Duration(element);
                    var voice = (Number(element, "staff"), Number(element, "voice"));
                    Assert.True(element.Element("chord") is not null || voices.GetValueOrDefault(voice) == last, "a voice has a gap");
                    voices[voice] = at;
                    break;
                case "backup":
                    at -= Duration(element);
                    break;
                case "harmony":
                    chords.Add((at + Offset(element), Symbol(element)));
                    break;
                case "direction" when element.Element("sound")?.Attribute("tempo") is { } tempo:
                    tempi.Add((at + Offset(element), double.Parse(tempo.Value, CultureInfo.InvariantCulture)));
                    break;
            }
        }

        Assert.Equal(3, voices.Count);
        Assert.Single(voices.Values.Distinct());
        var bar = new WalkedBar(measure.Attribute("number")!.Value, measure.Attribute("implicit") is null, at, _time, strokes, chords, tempi);
        foreach (var line in measure.Elements("barline"))
        {
            Barline(line, bar);
        }

        _bars.Add(bar);
    }

    private void Note(XElement note, Beats at, List<WalkedStroke> strokes)
    {
        if (note.Element("type")?.Value is { } type)
        {
            Assert.Equal(Value(note, type), Duration(note));
        }

        if (note.Element("pitch") is { } pitch && !note.Elements("tie").Any(t => (string?)t.Attribute("type") == "stop"))
        {
            var natural = new NoteName(Enum.Parse<Letter>(pitch.Element("step")!.Value)).PitchClass.Value;
            strokes.Add(new WalkedStroke(
                at,
                natural + ((int?)pitch.Element("alter") ?? 0) + (12 * ((int)pitch.Element("octave")! + 1)),
                Number(note, "staff"),
                Number(note, "voice"),
                note.Element("stem")!.Value,
                note.Element("notations")?.Element("arpeggiate") is not null,
                (string?)note.Element("notehead")?.Attribute("parentheses") == "yes"));
        }
    }

    private static Beats Value(XElement note, string type)
    {
        var value = Beats.OfQuarters(8);
        for (var i = 0; i < Array.IndexOf(Types, type); i++)
        {
            value /= 2;
        }

        value = note.Elements("dot").Any() ? value * 3 / 2 : value;
        return note.Element("time-modification") is { } tuplet
            ? value * (int)tuplet.Element("normal-notes")! / (int)tuplet.Element("actual-notes")!
            : value;
    }

    private static void Barline(XElement line, WalkedBar bar)
    {
        var ending = line.Element("ending");
        var repeat = line.Element("repeat");
        bar.Opens |= (string?)repeat?.Attribute("direction") == "forward";
        if ((string?)repeat?.Attribute("direction") == "backward")
        {
            bar.Closes = (int?)repeat!.Attribute("times") ?? 2;
        }

        if ((string?)ending?.Attribute("type") == "start")
        {
            bar.Ending = [.. ending!.Attribute("number")!.Value.Split(',').Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
        }
        else if (ending is not null)
        {
            bar.EndsEnding = true;
        }
    }

    private static string Symbol(XElement harmony)
    {
        var kind = harmony.Element("kind")!;
        if (kind.Value == "none")
        {
            return "N.C.";
        }

        var bass = harmony.Element("bass") is { } found ? "/" + Name(found, "bass") : "";
        return Name(harmony.Element("root")!, "root") + kind.Attribute("text")!.Value + bass;
    }

    private static string Name(XElement of, string name) =>
        new NoteName(Enum.Parse<Letter>(of.Element(name + "-step")!.Value), (int?)of.Element(name + "-alter") ?? 0).ToString();

    private Beats Duration(XElement of) => Beats.OfQuarters((long)of.Element("duration")!, _divisions);

    private Beats Offset(XElement of) => Beats.OfQuarters((long?)of.Element("offset") ?? 0, _divisions);

    private static int Number(XElement of, string name) => (int)of.Element(name)!;
}
