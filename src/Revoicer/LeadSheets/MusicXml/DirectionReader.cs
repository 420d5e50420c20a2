using System.Globalization;
using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads from directions what changes the music: speeds, "no chord", and the signs for the order of bars.</summary>
/// <param name="places">Where elements stand.</param>
/// <param name="remarks">Takes warnings.</param>
internal sealed class DirectionReader(XmlPlaces places, Remarks remarks)
{
    private const double SlowestQuarters = 4;
    private const double FastestQuarters = 6000;

    private static readonly string[] BeatUnits = ["breve", "whole", "half", "quarter", "eighth", "16th", "32nd"];

    /// <summary>Takes a direction at a place.</summary>
    public void Take(XElement direction, Beats at, ReadMeasure measure)
    {
        var types = direction.Children("direction-type").Elements().ToArray();
        var metronome = types.Where(t => t.Name.LocalName == "metronome").Select(Metronome).OfType<Tempo>().FirstOrDefault();
        if (metronome != default)
        {
            Add(metronome, direction, at, measure);
        }

        var sound = direction.Child("sound");
        if (sound is not null)
        {
            TakeSound(sound, at, measure, hasTempo: metronome != default);
        }

        var words = string.Join(' ', types.Where(t => t.Name.LocalName == "words").Select(t => t.Value)).Trim().ToLowerInvariant();
        if (words is "n.c." or "n.c" or "nc" or "nc.")
        {
            measure.Symbols.Add((at, null, places.Of(direction)));
        }

        measure.Signs.IsSegno |= types.Any(t => t.Name.LocalName == "segno");
        TakeWords(words, measure.Signs);
        if (types.Any(t => t.Name.LocalName == "coda") && !measure.Signs.ToCoda)
        {
            measure.Signs.IsCoda = true;
        }
    }

    /// <summary>Takes a sound element: what it says of playing holds.</summary>
    public void TakeSound(XElement sound, Beats at, ReadMeasure measure, bool hasTempo = false)
    {
        var signs = measure.Signs;
        signs.DaCapo |= sound.Text("dacapo") == "yes";
        signs.DalSegno |= sound.Text("dalsegno") is not null;
        signs.ToCoda |= sound.Text("tocoda") is not null;
        signs.IsFine |= sound.Text("fine") is not null;
        signs.IsSegno |= sound.Text("segno") is not null;
        signs.IsCoda |= sound.Text("coda") is not null;
        if (!hasTempo && sound.Text("tempo") is { } text && double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var perMinute))
        {
            Add(new Tempo(Beats.OfQuarters(1), perMinute), sound, at, measure);
        }
    }

    /// <summary>To be called when a bar has been read: keeps what lies in it.</summary>
    public void Keep(ReadMeasure measure)
    {
        measure.Tempi.RemoveAll(t => t.From >= measure.Length || t.From < Beats.Zero);
        var late = measure.Symbols.Where(s => s.At >= measure.Length).ToArray();
        if (late.Length > 0)
        {
            remarks.WarnOnce(late[0].Where, "a chord symbol behind the end of its bar is passed over", "it at a place of the bar");
        }

        measure.Symbols.RemoveAll(s => s.At >= measure.Length);
    }

    private static void TakeWords(string words, OrderSigns signs)
    {
        if (words.StartsWith("d.c.", StringComparison.Ordinal) || words.StartsWith("da capo", StringComparison.Ordinal) || words is "dc" or "d.c")
        {
            signs.DaCapo = true;
        }
        else if (words.StartsWith("d.s.", StringComparison.Ordinal) || words.StartsWith("dal segno", StringComparison.Ordinal) || words is "ds" or "d.s")
        {
            signs.DalSegno = true;
        }
        else if (words.StartsWith("to coda", StringComparison.Ordinal))
        {
            signs.ToCoda = true;
        }
        else if (words is "fine" or "fine.")
        {
            signs.IsFine = true;
        }
    }

    private void Add(Tempo tempo, XElement from, Beats at, ReadMeasure measure)
    {
        if (tempo.QuartersPerMinute is < SlowestQuarters or > FastestQuarters || double.IsNaN(tempo.PerMinute))
        {
            remarks.WarnOnce(places.Of(from), "a tempo that nobody plays is passed over", "4 to 6000 quarters a minute");
            return;
        }

        measure.Tempi.Add(new TempoChange(at, tempo));
    }

    private static Tempo? Metronome(XElement metronome)
    {
        var place = Array.IndexOf(BeatUnits, metronome.ChildText("beat-unit"));
        var text = metronome.ChildText("per-minute")?.Trim('(', ')', ' ', '=');
        if (place < 0 || text is null || !double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var perMinute) || perMinute <= 0)
        {
            return null;
        }

        var unit = Beats.OfQuarters(8) / (1 << place);
        return new Tempo(metronome.Has("beat-unit-dot") ? unit * 3 / 2 : unit, perMinute);
    }
}
