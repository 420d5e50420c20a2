using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Tests.Playing;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>
/// The bass that goes with a tune a tenth or a seventeenth below it. That the two are a third (tenth) and an octave or two is
/// what the words mean; which tones may stand in it is common practice, as docs/playing.md writes it down.
/// </summary>
public sealed class BassInTenthsTests
{
    [Theory]
    [InlineData("\"C\"E G E2|\"F\"A4|]", "C3 E3 C3")] // the major tenth and the minor; a seventeenth below there is no pedal
    [InlineData("\"C\"e2 g2|\"F\"a4|]", "C4 E4; C3 E3")]
    [InlineData("\"Am\"c'2 e'2|\"F\"a4|]", "A3 C4")] // a tenth below C6 there is no pedal
    [InlineData("\"C7\"e'2 g2|\"F\"a4|]", "C4 E3")] // a seventeenth below both; E6 has no pedal a tenth below
    [InlineData("\"C7\"e'2 g'2|\"F\"a4|]", "C4 E4")]
    public void It_has_the_tones_of_the_chord(string music, string lines) => Assert.Equal(lines, Lines("C", music));

    [Theory]
    [InlineData("C", "\"C\"E F G2|\"F\"A4|]", "C3 D3 E3")]
    [InlineData("C", "\"F\"A G A2|\"C\"G4|]", "F3 E3 F3")] // and back again
    [InlineData("C", "\"Dm\"F G A2|\"F\"A4|]", "D3 E3 F3")]
    [InlineData("Eb", "\"Fm\"A B c2|\"F\"A4|]", "F3 G3 Ab3")]
    [InlineData("Db", "\"Fm\"A B c2|\"F\"A4|]", "F3 Gb3 Ab3")] // the key says which tenth
    public void A_tone_of_the_key_passes_by_step_on_a_weak_beat(string key, string music, string line) => Assert.Equal(line, Spelled(Lines(key, music), key));

    [Theory]
    [InlineData("\"C\"c e e2|\"F\"a4|]")] // the first is a sixth above E, the tenth below it no tone of C
    [InlineData("\"C\"e f g a|\"F\"a4|]")] // the last is none, and on beat 3 there is another
    [InlineData("\"C\"e c' e2|\"F\"a4|]")] // reached by a leap
    [InlineData("\"C\"e f3/2 g3/2|\"F\"a4|]")] // longer than a beat
    [InlineData("\"C\"e4|\"F\"a4|]")] // one note
    [InlineData("\"C\"z e g2|\"F\"a4|]")] // not with the slot
    [InlineData("\"C\"e2 g2|]")] // the last chord is struck once
    [InlineData("\"C\"^C ^C ^C ^C|\"F\"a4|]")] // no pedal so low
    [InlineData("\"Csus4\"e f g2|\"F\"a4|]")] // begins on C, but E is no tone at its end
    public void Else_it_is_not_offered(string music) => Assert.Empty(Lines("C", music));

    [Fact]
    public void Without_a_key_nothing_passes()
    {
        Assert.Empty(Lines("none", "\"C\"e f g2|\"F\"a4|]"));
        Assert.Equal("C3 E3", Lines("none", "\"C\"E2 G2|\"F\"A4|]"));
    }

    [Theory]
    [InlineData(84, true)]
    [InlineData(300, false)]
    public void The_feet_need_their_time(int tempo, bool offered)
    {
        // C3 twice within two quarters, 0.4 s at 300 a minute; it needs 0.5 s (playing-limits.tsv, recovery_48_59_s).
        Assert.Equal(offered, Lines("C", "\"C\"E G E G|\"F\"A4|]", tempo).Length > 0);
    }

    [Fact]
    public void The_bass_comes_with_each_note_of_the_tune_and_the_hands_with_the_first()
    {
        var slot = TuneSlots.Plan(TuneSlots.Sheet("\"C\"E F G2|\"F\"A4|]"), ShippedTowers.Default).Slots[0];
        var texts = InTenths(slot).Select(c => string.Join(", ", c.Strokes.Select(s => $"{s.Note} {s.After}"))).ToArray();
        Assert.Contains("C3 0, C4 0, D3 1, E3 2", texts);
        Assert.All(texts, t => Assert.StartsWith("C3 0, ", t, StringComparison.Ordinal));
    }

    [Fact]
    public void The_first_stroke_is_the_bass_and_later_tones_of_the_chord_count_as_struck()
    {
        var slot = TuneSlots.Plan(TuneSlots.Sheet("\"C\"E F G2|\"F\"A4|]"), ShippedTowers.Default).Slots[0];
        var one = InTenths(slot).First(c => c.Voicing.Upper.Count == 1);
        Assert.Equal("C3", one.Voicing.Bass.ToString());
        Assert.Equal("C3", one.Lowest.ToString());
        Assert.Equal("E3", one.LastBass.ToString());
        Assert.Equal((3, 2), (one.Voicing.Bells, one.Voicing.InGrip)); // D passes and is not counted
        Assert.True(one.Voicing.PitchClasses.Contains(PitchClass.Of(4)));
        Assert.False(one.Voicing.PitchClasses.Contains(PitchClass.Of(2)));
        Assert.Equal(4, one.Notes.Count);
    }

    [Law(MaxTest = 60)]
    public Property Every_bass_lies_a_tenth_or_seventeenth_below_its_note_and_can_be_played()
    {
        var tunes =
            from tower in Gen.Elements("custom-house-37", "harbour-47", "great-56").Select(ShippedTowers.Named)
            from tempo in Gen.Choose(40, 200)
            from chord in Gen.Elements("C", "Am", "F", "Dm", "G7", "Em7", "Fmaj7")
            from start in Gen.Choose(3, 9)
            from steps in Gen.Elements(-2, -1, 1, 2).ArrayOf(3)
            from lengths in Gen.Elements("1/2", "", "3/2", "2").ArrayOf(4)
            select (tower, Music: $"\"{chord}\"{Notes(start, steps, lengths)} z4|\"F\"F4|]", tempo);
        return Prop.ForAll(tunes.ToArbitrary(), drawn =>
        {
            var tune = TuneSlots.Sheet(drawn.Music, "C", drawn.tempo);
            var slot = TuneSlots.Plan(tune, drawn.tower, 0).Slots[0];
            var checker = new Checker(drawn.tower);
            foreach (var candidate in TuneSlots.List(slot, drawn.tower).Where(c => c.Figure == Figure.InTenths))
            {
                var bass = candidate.Strokes.Where(s => s.IsPedal).ToArray();
                Assert.Equal(slot.TuneHere.Select(n => n.After), bass.Select(s => s.After));
                Assert.All(bass.Zip(slot.TuneHere), pair => Assert.Contains((pair.Second.Note - pair.First.Note).Semitones, new[] { 15, 16, 27, 28 }));
                Assert.Single(bass.Zip(slot.TuneHere, (b, n) => (n.Note - b.Note).Semitones > 20).Distinct());
                Assert.DoesNotContain(checker.Check(TuneSlots.Timed(slot, candidate)), b => !b.InTune);
            }
        });
    }

    private static string Notes(int start, int[] steps, string[] lengths)
    {
        string[] scale = ["C", "D", "E", "F", "G", "A", "B", "c", "d", "e", "f", "g", "a", "b", "c'", "d'"];
        var at = start;
        return string.Concat(lengths.Select((length, i) => scale[i == 0 ? at : at = Math.Clamp(at + steps[i - 1], 0, 15)] + length));
    }

    private static IEnumerable<Candidate> InTenths(Slot slot) => TuneSlots.List(slot, ShippedTowers.Default).Where(c => c.Figure == Figure.InTenths);

    private static string Lines(string key, string music, int tempo = 84) => string.Join("; ", InTenths(TuneSlots.Plan(TuneSlots.Sheet(music, key, tempo), ShippedTowers.Default).Slots[0])
        .Select(c => string.Join(' ', c.Strokes.Where(s => s.IsPedal).Select(s => s.Note)))
        .Distinct());

    // Notes are printed with sharps; here as a key with flats has them.
    private static string Spelled(string line, string key) =>
        key.EndsWith('b') ? line.Replace("G#", "Ab", StringComparison.Ordinal).Replace("F#", "Gb", StringComparison.Ordinal) : line;
}
