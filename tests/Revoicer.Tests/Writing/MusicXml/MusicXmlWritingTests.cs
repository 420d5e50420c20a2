using System.Xml.Linq;
using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Writing.MusicXml;
using Xunit;

namespace Revoicer.Tests.Writing.MusicXml;

public sealed class MusicXmlWritingTests
{
    public static TheoryData<string> Demos =>
        [.. RepositoryFiles.All("leadsheets-demo", "*.chords"), .. RepositoryFiles.All("leadsheets-demo", "*.abc")];

    [Law(Arbitrary = [typeof(ScoreGens)], MaxTest = 300)]
    public void What_is_read_back_is_what_was_arranged(Arrangement arrangement) => Holds(arrangement);

    [Law(Arbitrary = [typeof(ScoreGens)], MaxTest = 100, Skip = MusicXmlSchema.Absent, SkipUnless = nameof(MusicXmlSchema.IsThere), SkipType = typeof(MusicXmlSchema))]
    public void A_random_score_is_valid(Arrangement arrangement) => Assert.Empty(MusicXmlSchema.Faults(MusicXmlWriting.Bytes(arrangement)));

    [Theory]
    [MemberData(nameof(Demos))]
    public void A_demo_is_valid_and_read_back_the_same(string file)
    {
        var arrangement = DemoDrafts.Of(file);
        var bytes = MusicXmlWriting.Bytes(arrangement);
        Holds(arrangement);
        Assert.Equal(bytes, MusicXmlWriting.Bytes(arrangement));
        Assert.Empty(MusicXmlSchema.Faults(bytes));
    }

    [Fact]
    public void Samples_are_valid_and_read_back_the_same()
    {
        foreach (var sample in new[] { SampleArrangements.HarbourLights, SampleArrangements.OneStroke, SampleArrangements.RollIntoTheStart })
        {
            Holds(sample);
            Assert.Empty(MusicXmlSchema.Faults(MusicXmlWriting.Bytes(sample)));
        }
    }

    [Theory]
    [InlineData("lamps-on-the-quay.chords", "|: 1 2 3 4 5 6 7 [1 8 :| [2 9 | 10 11 12 13 14 15 16 17")]
    [InlineData("round-the-breakwater.abc", "0 |: 1 2 3 4 5 6 7 [1 8 :| [2 9 | 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25")]
    public void A_sheet_comes_out_as_it_is_written(string file, string written)
    {
        var walk = ScoreWalk.Through(MusicXmlWriting.Bytes(DemoDrafts.Of(file)));
        Assert.Equal(written, Signs(walk));
    }

    [Theory]
    [InlineData("0 1 0 1 2", "|: 1 2 :| 3")]
    [InlineData("0 1 2 0 1 3", "|: 1 2 [1 3 :| [2 4 |")]
    [InlineData("0 1 0 1 0 2", "|: 1 [1,2 2 :| [3 3 |")]
    [InlineData("0 0 0", "|: 1 :|x3")]
    [InlineData("0 1 0 1 2 0 1", "|: 1 2 :| 3 1 2")]
    public void Bars_heard_again_are_written_once(string heard, string written)
    {
        int[] order = [.. heard.Split(' ').Select(int.Parse)];
        var arrangement = SampleArrangements.OneStroke with
        {
            Bars = [.. order.Select((w, i) => new ArrangedBar(w + 1, 1, Beats.OfQuarters(4 * i), Beats.OfQuarters(4), new Meter(4, 4)) { Written = w })],
            Strokes = [],
        };
        Assert.Equal(written, Signs(ScoreWalk.Through(MusicXmlWriting.Bytes(arrangement))));
    }

    [Fact]
    public void Bells_outside_the_usual_compass_are_in_parentheses_and_hands_are_told_by_stems()
    {
        // The usual compass: 47 bells from written C to c4 without C sharp and D sharp (common practice).
        Stroke Struck(int midi, Limb limb) => SampleArrangements.OneStroke.Strokes[0] with { Note = WrittenNote.AtMidi(midi), Limb = limb };
        var walk = ScoreWalk.Through(MusicXmlWriting.Bytes(SampleArrangements.OneStroke with
        {
            Strokes = [Struck(49, Limb.LeftFoot), Struck(60, Limb.LeftHand), Struck(96, Limb.RightHand), Struck(97, Limb.RightHand)],
        }));
        Assert.Equal(
            [(49, 2, "down", true), (60, 1, "down", false), (96, 1, "up", false), (97, 1, "up", true)],
            walk.Written[0].Strokes.OrderBy(s => s.Midi).Select(s => (s.Midi, s.Staff, s.Stem, s.IsInParentheses)));
    }

    [Fact]
    public void A_symbol_keeps_its_text_and_its_degrees_are_told_exactly()
    {
        // C13 as docs/chord-symbols.md has it goes without the eleventh, which the kind dominant-13th includes (MusicXML 4.0).
        var harmony = Harmony("C13");
        Assert.Equal("dominant-ninth", harmony.Element("kind")!.Value);
        Assert.Equal("13", (string?)harmony.Element("kind")!.Attribute("text"));
        var degree = Assert.Single(harmony.Elements("degree"));
        Assert.Equal(("13", "add"), (degree.Element("degree-value")!.Value, degree.Element("degree-type")!.Value));

        // An added seventh is counted from the minor one (degree-alter, MusicXML 4.0).
        var suspended = Harmony("Fmaj7sus4").Elements("degree").Single(d => d.Element("degree-value")!.Value == "7");
        Assert.Equal(("1", "add"), (suspended.Element("degree-alter")!.Value, suspended.Element("degree-type")!.Value));
    }

    [Fact]
    public void Every_direction_stands_before_a_note()
    {
        foreach (var file in Demos)
        {
            var score = Score(MusicXmlWriting.Bytes(DemoDrafts.Of(file.Data)));
            Assert.All(score.Descendants("direction"), d => Assert.Contains(d.ElementsAfterSelf().First(e => e.Name.LocalName is not ("direction" or "harmony")).Name.LocalName, "note"));
        }
    }

    [Fact]
    public void The_head_says_what_the_tower_needs()
    {
        var fields = Score(MusicXmlWriting.Bytes(SampleArrangements.HarbourLights)).Descendants("miscellaneous-field")
            .ToDictionary(f => f.Attribute("name")!.Value, f => f.Value);
        Assert.Equal("12 bells from C3 to C6", fields["bells"]);
        Assert.Equal("pedals from C3 to A3", fields["pedals"]);
        Assert.Equal("sounds an octave higher", fields["pitch"]);
        Assert.Equal("written in C major, heard in C major", fields["key"]);
        Assert.Equal("balanced", fields["sound"]);
    }

    [Law(Arbitrary = [typeof(ArrangementGens)], MaxTest = 100, Skip = MusicXmlSchema.Absent, SkipUnless = nameof(MusicXmlSchema.IsThere), SkipType = typeof(MusicXmlSchema))]
    public void Odd_titles_and_odd_places_still_make_a_file(Arrangement arrangement)
    {
        var end = arrangement.Bars[^1].Start + arrangement.Bars[^1].Length;
        var inside = arrangement with { Strokes = [.. arrangement.Strokes.Where(s => s.Beat < end)] };
        Assert.Empty(MusicXmlSchema.Faults(MusicXmlWriting.Bytes(inside)));
    }

    private static void Holds(Arrangement arrangement)
    {
        var heard = ScoreWalk.Through(MusicXmlWriting.Bytes(arrangement)).Heard();
        Assert.Equal(
            arrangement.Bars.Select(b => (b.Number.ToString(), b.Start, b.Length, b.Meter.ToString())),
            heard.Select(h => (h.Bar.Number, h.Start, h.Bar.Length, h.Bar.Time)));
        Assert.Equal(
            arrangement.Strokes.Select(s => (s.Beat, s.Note.Midi, s.IsPedal ? 2 : 1, s.Limb switch { Limb.RightHand => 1, Limb.LeftHand => 2, _ => 3 })).Distinct().OrderBy(s => s),
            heard.SelectMany(h => h.Bar.Strokes, (h, s) => (h.Start + s.At, s.Midi, s.Staff, s.Voice)).OrderBy(s => s));
        Assert.Subset(
            heard.SelectMany(h => h.Bar.Strokes.Where(s => s.IsRolled), (h, s) => (h.Start + s.At, s.Midi)).ToHashSet(),
            arrangement.Strokes.Where(s => s.Lead.Value > 0).Select(s => (s.Beat, s.Note.Midi)).ToHashSet());
        Assert.Equal(
            Changes(arrangement.Choices.Select(c => (c.Start, c.Symbol))),
            Changes(heard.SelectMany(h => h.Bar.Chords.Where(c => c.Symbol != "N.C."), (h, c) => (h.Start + c.At, c.Symbol))));
        Assert.Equal(
            arrangement.Tempi.Changes.Select(t => (t.From, Math.Round(t.Tempo.QuartersPerMinute, 6))),
            heard.SelectMany(h => h.Bar.Tempi, (h, t) => (h.Start + t.At, Math.Round(t.PerMinute, 6))).DistinctBy(t => t.Item2));
    }

    // Where another symbol than before is heard.
    private static List<(Beats, string)> Changes(IEnumerable<(Beats At, string Symbol)> symbols)
    {
        var changes = new List<(Beats, string Symbol)>();
        foreach (var (at, symbol) in symbols)
        {
            if (changes.Count == 0 || changes[^1].Symbol != symbol)
            {
                changes.Add((at, symbol));
            }
        }

        return changes;
    }

    private static string Signs(ScoreWalk walk) => string.Join(' ', walk.Written.SelectMany(bar => new[]
    {
        bar.Opens ? "|:" : "",
        bar.Ending.Length > 0 ? "[" + string.Join(',', bar.Ending) : "",
        bar.Number,
        bar.Closes > 0 ? bar.Closes > 2 ? $":|x{bar.Closes}" : ":|" : bar.EndsEnding ? "|" : "",
    }).Where(sign => sign.Length > 0));

    private static XElement Harmony(string symbol)
    {
        var choice = SampleArrangements.HarbourLights.Choices[0] with { Symbol = symbol, Start = Beats.Zero, Length = Beats.OfQuarters(4), Strokes = [] };
        return Score(MusicXmlWriting.Bytes(SampleArrangements.OneStroke with { Choices = [choice] })).Descendants("harmony").Single();
    }

    private static XElement Score(byte[] file) => XDocument.Load(new MemoryStream(file)).Root!;
}
