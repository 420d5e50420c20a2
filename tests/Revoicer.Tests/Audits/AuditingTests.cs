using FsCheck;
using FsCheck.Fluent;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Audits;

public class AuditingTests
{
    private static readonly Tower Tower = ShippedTowers.Default;

    private static readonly Lazy<Passage> Waltz = new(() =>
        Passages.ReadBack(Passages.Draft(Passages.Sheet(RepositoryFiles.All("leadsheets-demo", "ferry-waltz.chords").Single()))));

    [Fact]
    public void What_can_be_played_is_told_so()
    {
        var audit = Audit(Passages.Bar("C3+E5+G5 G5 C3+E5+G5 C6"));
        Assert.True(audit.IsPlayable);
        Assert.Empty(audit.MissingBells);
        Assert.False(audit.LimbsAreGiven);
        Assert.Equal(8, audit.Strokes.Count);
    }

    [Fact]
    public void Two_voices_on_one_bell_strike_it_once()
    {
        var one = Passages.Bar("C4+E5 G5 E5 C5");
        var two = one with { Voices = [one.Voices[0], one.Voices[0] with { Name = "double" }] };
        Assert.Equal(Audit(one), Audit(two));
    }

    [Fact]
    public void A_roll_comes_upward_and_ends_on_the_beat()
    {
        var step = ShippedSounds.Default.RollStep;
        var audit = Audit(Passages.Bar("~C4+G4+E5 -"));
        Assert.Equal(["C4", "G4", "E5"], audit.Strokes.Select(s => s.Note.ToString()));
        Assert.Equal([2, 1, 0], audit.Strokes.Select(s => (int)Math.Round(s.Lead.Value / step.Value)));
        Assert.Equal(step * 2, audit.Shift);
        Assert.Equal(0, audit.Strokes[0].At.Value, 9);
    }

    [Fact]
    public void A_roll_ends_a_step_before_what_is_struck_on_its_beat()
    {
        var bar = Passages.Bar("~C4+G4+C6 -");
        var notes = bar.Voices[0].Bars[0].Select(n => n with { IsRolled = n.Note.Midi < 84 }).ToItems();
        var audit = Audit(bar with { Voices = [new PassageVoice("all", [notes])] });
        Assert.Equal([2, 1, 0], audit.Strokes.Select(s => (int)Math.Round(s.Lead.Value / ShippedSounds.Default.RollStep.Value)));
    }

    [Fact]
    public void A_bell_that_is_missing_is_told_with_the_nearest_and_left_out()
    {
        // The default tower has neither C#3 nor any bell above C7.
        var audit = Audit(Passages.Bar("C#3+E5 G5 E5 C8"));
        Assert.False(audit.IsPlayable);
        Assert.Equal([("C#3", "C#4"), ("C8", "C7")], audit.MissingBells.Select(m => ($"{m.Note}", $"{m.Nearest}")));
        Assert.Equal([1.0, 4.0], audit.Unplayable.Select(p => p.Beat));
        Assert.All(audit.Unplayable, p => Assert.Empty(p.Broken));
        Assert.Equal(3, audit.Strokes.Count);
        Assert.Contains("in no key within an octave does every note have a bell", audit.Told);
    }

    [Fact]
    public void Keys_in_which_every_note_has_a_bell_are_told()
    {
        var audit = Audit(Passages.Bar("C#3+E5 C7 E5 C7"));
        Assert.Equal("every note has a bell with --key -1", Assert.Single(audit.Told));
    }

    [Theory]
    [InlineData("C5+D#5+F#5+A5+C6+D#6+F#6+A6 -", 60, "bells_at_once")]
    [InlineData("G5 G5 G5 G5 G5 G5 G5 G5", 250, "recovery_72_83_s")]
    [InlineData("E4+B4+F#5+C6 -", 60, "hand_move_base_s")]
    [InlineData("G5+A5+B5+C6+D6 -", 60, "hand_keys_at_once")]
    public void A_limit_that_is_broken_is_named(string words, double tempo, string limit) =>
        Assert.Contains(limit, Audit(Passages.Bar(words, tempo)).Unplayable.SelectMany(p => p.Broken).Select(b => b.Limit));

    [Fact]
    public void A_tempo_that_is_told_as_a_remedy_does()
    {
        var bar = Passages.Bar("G5 G5 G5 G5", 280);
        var told = Assert.Single(Audit(bar).Unplayable.Select(p => p.Remedy).Distinct());
        Assert.Equal("play it at 266 quarter notes a minute", told);
        Assert.True(Audit(bar, 266).IsPlayable);
    }

    [Fact]
    public void A_roll_that_is_told_as_a_remedy_does()
    {
        // For a player whose hands go no further than 20 semitones apart: A4 and A6 are 24, but in a roll of three they are
        // not struck at once, and D5 and A6 are 19.
        var near = Tower with { Limits = [new LimitOverride("hands_apart", 20, null)] };
        var struck = Passages.Bar("- A4+D5+A6 - -");
        var rolled = Passages.Bar("- ~A4+D5+A6 - -");
        Assert.Equal("roll it", Assert.Single(Auditing.Of(struck, struck.Sheet, near, ShippedSounds.Default, null, cancel: TestContext.Current.CancellationToken).Unplayable).Remedy);
        Assert.True(Auditing.Of(rolled, rolled.Sheet, near, ShippedSounds.Default, null, cancel: TestContext.Current.CancellationToken).IsPlayable);
    }

    [Fact]
    public void A_bass_in_another_octave_that_is_told_as_a_remedy_does()
    {
        var place = Assert.Single(Audit(Passages.Bar("- C5+D5+E5+F5+G5 - -")).Unplayable);
        Assert.Equal("play C5 an octave lower, C4 with the right foot", place.Remedy);
        Assert.True(Audit(Passages.Bar("- C4+D5+E5+F5+G5 - -")).IsPlayable);
    }

    [Fact]
    public void What_is_to_be_left_out_is_told_and_does()
    {
        const string Chord = "C5+D#5+F#5+A5+C6+D#6+F#6";
        var place = Assert.Single(Audit(Passages.Bar($"{Chord} -")).Unplayable);
        Assert.StartsWith("leave out ", place.Remedy, StringComparison.Ordinal);
        var kept = Chord.Split('+').Except(place.Remedy!["leave out ".Length..].Split(", "));
        Assert.True(Audit(Passages.Bar($"{string.Join('+', kept)} -")).IsPlayable);
    }

    [Fact]
    public void Without_chords_there_is_no_contradiction_and_it_is_told()
    {
        var audit = Audit(Passages.Bar("C3+E4+G4 - - -", chord: null));
        Assert.All(audit.BarClashes, b => Assert.Equal(0, b.Clash.Contradiction));
        Assert.Contains("there are no chord symbols, so no contradiction is told, and clash is roughness alone", audit.Told);
        Assert.Null(Assert.Single(audit.Chords).Symbol);
    }

    [Fact]
    public void Chords_found_elsewhere_may_stand_over_the_passage()
    {
        var bare = Passages.Bar("C3+E4+G4 - - -", chord: null);
        var named = Passages.Bar("C3+E4+G4 - - -");
        Assert.Equal(Audit(named), Auditing.Of(bare, named.Sheet, Tower, ShippedSounds.Default, null, cancel: TestContext.Current.CancellationToken));
        Assert.Throws<ArgumentException>(() => Auditing.Of(bare, Waltz.Value.Sheet, Tower, ShippedSounds.Default, null, cancel: TestContext.Current.CancellationToken));
    }

    // docs/clash-model.md: what the tune clashes with itself is left out of medians, so also out of the bars that they are of.
    [Fact]
    public void The_headline_lies_between_the_least_and_the_largest_bar_where_it_is_their_median_and_so_with_the_tune()
    {
        const string Music = "X:1\nT:Quay\nM:4/4\nL:1/4\nQ:1/4=120\nK:C\nV:1\nc' b c' b|c' d' c' b|a2 g2|e' ^d' e'2|]\nV:2\nC2 E2|E F G2|A4|C G, C2|]\n";
        var passage = Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage("quay.abc", Music, SheetChoice.First)).Value;
        var tune = PassageTune.Of(passage, null);
        var audit = Auditing.Of(passage, passage.Sheet, Tower, ShippedSounds.Default, null, tune, cancel: TestContext.Current.CancellationToken);
        double[] bars = [.. audit.BarClashes.Select(b => b.Clash.Avoidable)], withTune = [.. audit.BarClashes.Select(b => b.Clash.Whole)];
        Assert.InRange(audit.Totals.MedianClash, bars.Min(), bars.Max());
        Assert.InRange(audit.Totals.MedianWithTune, withTune.Min(), withTune.Max());
        Assert.Contains(audit.BarClashes, b => b.Clash.Tune > 1);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(240)]
    public void The_reference_chord_has_a_clash_of_100_over_a_bar_of_any_length(double tempo)
    {
        // What a clash of 100 is: C4 E4 G4 as heard, struck together, whatever the length (docs/clash-model.md). The default
        // tower sounds an octave above written.
        var even = ShippedSounds.Default with { HeavyTouch = Decibels.Zero };
        var bar = Passages.Bar("C3+E3+G3 - - -", tempo);
        var audit = Auditing.Of(bar, bar.Sheet, Tower, even, null, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(100, audit.BarClashes[0].Clash.Whole, 6);
        Assert.Equal(100, audit.Totals.ClashDose, 6);
        Assert.Equal(100, audit.Totals.MedianClash, 6);
    }

    [Law(MaxTest = 10)]
    public FsCheck.Property An_impossible_chord_is_found_at_its_place()
    {
        // More than six bells (bells_at_once in playing-limits.tsv) on a beat on which the waltz strikes.
        var bars = Waltz.Value.Voices[0].Bars;
        var places = bars.SelectMany((notes, bar) => notes.Select(n => (Bar: bar, n.Start)).Distinct()).ToArray();
        return Prop.ForAll(Gen.Elements(places).ToArbitrary(), place =>
        {
            var added = new[] { 61, 64, 66, 69, 73, 76, 80, 85, 90 }
                .Select(midi => bars[place.Bar][0] with { Start = place.Start, Note = WrittenNote.AtMidi(midi), IsRolled = false, IsTiedOn = false });
            var notes = bars[place.Bar].Concat(added).OrderBy(n => n.Start).ThenBy(n => n.Note).ToItems();
            var voice = new PassageVoice("more", bars.Select((b, i) => i == place.Bar ? notes : b).ToItems());
            var audit = Audit(Waltz.Value with { Voices = [voice, .. Waltz.Value.Voices.Skip(1)] });
            var written = Waltz.Value.Sheet.Bars[place.Bar];
            var beat = ((written.Offset + place.Start).Quarters / written.Meter.Beat.Quarters) + 1;
            Assert.Contains(audit.Unplayable, p => p.Bar == written.Number && p.Beat == beat && p.Broken.Any(b => b.Limit == "bells_at_once"));

            // Nothing is found where no stroke of it can be felt: no limit looks back so far.
            var at = audit.Tempi.At(Waltz.Value.Sheet.Played.First(p => p.Written == place.Bar).Start + place.Start);
            Assert.All(audit.Unplayable, p => Assert.InRange(Math.Abs((audit.Tempi.At(p.Place) - at).Value), 0, 3));
        });
    }

    private static AuditReport Audit(Passage passage, double? tempo = null) => Auditing.Of(
        passage, passage.Sheet, Tower, ShippedSounds.Default, tempo is { } perMinute ? new Tempo(Beats.OfQuarters(1), perMinute) : null, cancel: TestContext.Current.CancellationToken);

    // A cluster of eight in every 32nd note is beyond any simple change; alone, the least of them has one.
    [Fact]
    public void Remedies_are_not_looked_for_among_dense_clusters()
    {
        const string cluster = "C4+D4+E4+F4+G4+A4+B4+C5";
        var dense = Of(string.Join(' ', Enumerable.Repeat(cluster, 32)));
        Assert.NotEmpty(dense.Unplayable);
        Assert.All(dense.Unplayable, p => Assert.Null(p.Remedy));
        Assert.NotNull(Assert.Single(Of($"{cluster} - - -").Unplayable).Remedy);

        static AuditReport Of(string words)
        {
            var passage = Passages.Bar(words);
            return Auditing.Of(passage, passage.Sheet, ShippedTowers.Default, ShippedSounds.Default, null, cancel: TestContext.Current.CancellationToken);
        }
    }
}
