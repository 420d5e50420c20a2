using System.Text.RegularExpressions;
using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Writing.Text;

public class RationaleTextTests
{
    [Fact]
    public void Harbour_Lights_reads_as_kept() =>
        Expected.Text("harbour-lights", RationaleText.Of(SampleArrangements.HarbourLights));

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void No_line_is_longer_than_a_hundred_characters_or_ends_with_a_blank(Arrangement arrangement) =>
        Assert.All(RationaleText.Of(arrangement).Split('\n'), line =>
        {
            Assert.InRange(line.Length, 0, 100);
            Assert.Equal(line.TrimEnd(), line);
            Assert.DoesNotContain(line, char.IsControl);
        });

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void Every_stroke_of_a_chord_is_named_with_its_limb(Arrangement arrangement)
    {
        var text = RationaleText.Of(arrangement);
        var notes = new KeySpelling(arrangement.WrittenKey);
        Assert.All(
            arrangement.Choices.SelectMany(c => c.Strokes, (c, s) => (Note: notes.Of(s.Note, c.ToneNames), Limb: Revoicer.Playing.LimbNames.Of(s.Limb))),
            s => Assert.Matches($@"{s.Note}\s+\({s.Limb.Replace(" ", @"\s+")}", text));
    }

    [Fact]
    public void A_title_of_one_endless_word_is_broken() =>
        Assert.All(
            RationaleText.Of(SampleArrangements.OneStroke with { Title = new string('x', 1234) }).Split('\n'),
            line => Assert.InRange(line.Length, 0, 100));

    [Theory]
    [InlineData("C", 61, "C#4")]
    [InlineData("C", 63, "Eb4")]
    [InlineData("C", 70, "Bb4")]
    [InlineData("Bb", 63, "Eb4")]
    [InlineData("Bb", 68, "Ab4")]
    [InlineData("E minor", 63, "D#4")]
    [InlineData("D minor", 61, "C#4")]
    [InlineData("Gb", 71, "Cb5")]
    [InlineData("C#", 60, "B#3")]
    [InlineData("C#", 65, "E#4")]
    [InlineData("Gb", 69, "A4")]
    [InlineData("C#", 67, "G4")]
    [InlineData("G# minor", 67, "F##4")]
    [InlineData("A# minor", 67, "F##4")]
    public void Notes_are_spelled_as_the_key_has_them(string name, int midi, string spelled)
    {
        // Common practice: a key's own tones by its signature, the raised seventh of minor as a raised tone.
        Assert.True(KeySignature.TryParse(name, out var key));
        Assert.Equal(spelled, new KeySpelling(key).Of(WrittenNote.AtMidi(midi)));
    }

    [Theory]
    [InlineData("G", "Cm6", "C3 Eb4 G4 A4")]
    [InlineData("G", "Bbdim7/Fb", "Fb3 Bb3 Db4 G4")]
    [InlineData("Gb", "Gbm7", "Gb3 A3 Db4 Fb4")]
    [InlineData("C", "A7/Db", "Db3 A3 E4 G4")]
    [InlineData("G# minor", "D#7", "D#3 F##4 A#4 C#5")]
    public void The_tones_of_a_chord_are_spelled_as_its_symbol_has_them(string name, string symbol, string spelled)
    {
        // Chord spelling by thirds above the root (common practice), but no two accidentals where the key has fewer.
        Assert.True(KeySignature.TryParse(name, out var key));
        var read = Assert.IsType<Reading<ChordText>.Accepted>(ChordSymbolReader.Read(symbol, Place.WholeFile("test")));
        var chord = ArrangementMaking.ToneNames(Assert.IsType<ChordText.Chord>(read.Value).Symbol);
        var notes = spelled.Split(' ').Select(n => NoteSpelling.TryMidi(n, out var midi) ? WrittenNote.AtMidi(midi) : default);
        Assert.Equal(spelled, string.Join(' ', notes.Select(n => new KeySpelling(key).Of(n, chord))));
    }

    [Fact]
    public void All_that_is_told_of_a_chord_has_its_symbols_names()
    {
        var sample = SampleArrangements.HarbourLights;
        var choice = sample.Choices[0] with
        {
            SoundingBass = new NoteName(Letter.E),
            RingingOn = [WrittenNote.AtMidi(52)],
            ToneNames = [new NoteName(Letter.C), new NoteName(Letter.F, -1)],
        };
        var text = Regex.Replace(RationaleText.Of(sample with { Choices = [choice] }), @"\s+", " ");
        Assert.Contains("C3 (left foot) 0.12 s before the beat, Fb4 (left hand)", text);
        Assert.Contains("against the hum of Fb4 (strikes Fb5)", text);
        Assert.Contains("above all the tierce of C3 against the hum of Fb4", text);
        Assert.Contains("C (here with Fb in the bass)", text);
        Assert.Contains("Still ringing when it begins: Fb3.", text);
        Assert.Contains("12 of 47: C3 E3 G3 A3 E4", text);
    }

    [Fact]
    public void Tones_that_ring_on_are_told()
    {
        var sample = SampleArrangements.HarbourLights;
        var (g, b) = (new NoteName(Letter.G), new NoteName(Letter.B, -1));
        string With(params NoteName[] left) => OnOneLine(RationaleText.Of(sample with { Choices = [sample.Choices[0] with { LeftRinging = left.ToItems() }] }));
        Assert.Contains(" Bb rings on from the chord before.", With(b));
        Assert.Contains(" G and Bb ring on from the chord before.", With(g, b));
        Assert.DoesNotContain("on from the chord before", With());

        static string OnOneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    [Theory]
    [InlineData(-0.04, "0.0")]
    [InlineData(12.35, "12.4")]
    public void Figures_have_one_decimal(double value, string text) => Assert.Equal(text, Sentences.Figure(value));

    [Fact]
    public void A_roll_is_told_with_its_times_and_another_bass_beside_the_symbol()
    {
        var text = RationaleText.Of(SampleArrangements.HarbourLights);
        Assert.Contains("Rolled: C3 (left foot) 0.12 s before the beat, E4 (left hand) 0.06 s before the beat.", text);
        Assert.Contains(": C (here with E in the bass)\n", text);
        Assert.Contains("Bar 1, second time through, beat 1", text);
    }

    [Fact]
    public void A_quarrel_that_lasts_no_longer_is_fading()
    {
        var sample = SampleArrangements.HarbourLights;
        var old = sample.Choices[0].Quarrels[0] with { Lasts = Seconds.Zero };
        var text = RationaleText.Of(sample with { Choices = [sample.Choices[0] with { Quarrels = [old] }] });
        Assert.Contains("330 Hz, fading: 41 % of the clash", text.Replace("\n     ", ""));
    }

    [Theory]
    [InlineData(0, "Next best: no bell at all; it costs 0.1 more.")]
    [InlineData(1, "Next best: C3 alone; it costs 0.1 more.")]
    [InlineData(2, "Next best: C3 G4, together; it costs 0.1 more.")]
    public void Only_two_bells_and_more_are_told_to_be_struck_together(int bells, string sentence)
    {
        var sample = SampleArrangements.HarbourLights;
        var notes = new[] { 48, 67 }.Take(bells).Select(WrittenNote.AtMidi).ToItems();
        var choice = sample.Choices[0] with { Alternatives = [new Alternative("together", notes, 100, [])] };
        Assert.Contains(sentence, RationaleText.Of(sample with { Choices = [choice] }));
    }

    // No voicing changes what the tune has with itself, so it does not say where a player should look.
    [Fact]
    public void The_worst_places_are_those_that_a_voicing_can_change()
    {
        var sample = SampleArrangements.HarbourLights;
        Choice Clashing(int bar, double own, double tune) => sample.Choices[0] with { Bar = bar, Clash = new ClashSplit(own, 0, 0, own, 0) { Tune = tune } };
        var text = RationaleText.Of(sample with { TuneOctaves = 0, Choices = [Clashing(1, 20, 90), Clashing(2, 30, 0)] });
        Assert.Matches(@"the tune with itself left out:\n  1\. bar 2, [^\n]*: 30\.0[^1]*\n(.*\n)*?  2\. bar 1, [^\n]*: 20\.0", text);
    }

    [Fact]
    public void A_pickup_is_not_counted_as_a_bar()
    {
        var sample = SampleArrangements.HarbourLights;
        Assert.Contains("a pickup and 5 bars as heard", RationaleText.Of(sample));
        var once = sample with { Bars = [sample.Bars[1] with { Start = Beats.Zero }] };
        Assert.Contains("Length       one bar as heard", RationaleText.Of(once));
    }

    [Fact]
    public void A_tempo_that_nobody_named_is_told() =>
        Assert.Contains(
            "60 quarter notes a minute (assumed: neither the sheet nor you named one)",
            RationaleText.Of(SampleArrangements.OneStroke));

    [Fact]
    public void The_strike_note_stands_beside_a_frequency_in_the_towers_own_transposition()
    {
        var sample = SampleArrangements.HarbourLights;
        var lower = sample with { Tower = sample.Tower with { Transposition = new Transposition(10) } };
        Assert.Contains("the tierce of C3 (strikes Bb3), 313 Hz", RationaleText.Of(lower));
    }
}
