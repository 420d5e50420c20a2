using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Tests.Writing;
using Revoicer.Text;
using Revoicer.Writing.Midi;
using Xunit;
using static Revoicer.Tests.LeadSheets.Midi.MidiBytes;

namespace Revoicer.Tests.LeadSheets.Midi;

/// <summary>Which grid is found, and what goes where on it.</summary>
public sealed class MidiGridTests
{
    // 100 quarters a minute at 480 ticks: a tick is 1.25 ms.
    private const int Division = 480;
    private static readonly (long, byte[])[] Head = [Metre(0, 4, 4), Speed(0, 600_000)];

    [Fact]
    public void Notes_near_sixteenths_are_taken_to_sixteenths_and_it_is_told()
    {
        // By hand up to 10 ticks, 12.5 ms, early or late; two of three on eighths.
        int[] off = [0, 7, -10, 3, 10, -6, 1, -2, 4, -9, 8, 0];
        int[] steps = [0, 2, 4, 6, 7, 8, 10, 12, 13, 14, 16, 18];
        var accepted = Played([.. steps.Select((s, i) => (72 + i, (s * 120L) + off[i], (s * 120L) + 115))]);
        Assert.Equal(steps.Select(s => Beats.OfQuarters(s, 4)), accepted.Value.Heard(accepted.Value.Voices[0]).Select(n => n.Start));
        Assert.Equal(
            [
                "quay.mid: quantised to sixteenths: 10 notes begin elsewhere, by at most 13 ms; expected notes that begin on note values\n",
                "quay.mid: ends of notes are taken to sixteenths, by at most 7 ms; expected notes that end on note values\n",
            ],
            accepted.Warnings.Select(w => w.ToString()));
    }

    [Fact]
    public void One_note_in_twenty_may_lie_off_the_grid()
    {
        var notes = Enumerable.Range(0, 40).Select(i => (60 + (i % 24), i * 480L + (i is 7 or 9 ? 200 : 3), i * 480L + 470)).ToArray();
        Assert.Contains("quantised to quarters: 40 notes", Played(notes).Warnings[0].Found, StringComparison.Ordinal);

        // A third note like those is one in thirteen.
        notes[11].Item2 += 200;
        Assert.DoesNotContain("to quarters", Played(notes).Warnings[0].Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_grid_fits_triplets_of_32nds_are_taken_and_it_is_told()
    {
        var notes = Enumerable.Range(0, 30).Select(i => (60 + i, i * 173L, (i * 173L) + 170)).ToArray();
        Assert.StartsWith("quantised to triplets of 32nds, though no grid fits: ", Played(notes).Warnings[0].Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(480, 1, 3)]
    [InlineData(480, 1, 2, 3)]
    [InlineData(480, 1, 5)]
    [InlineData(480, 4, 5)]
    [InlineData(480, 1, 7)]
    [InlineData(480, 3, 16)]
    [InlineData(100, 3)]
    [InlineData(192, 3, 8)]
    public void Whatever_lies_on_one_grid_stays_where_it_is(int division, params int[] parts)
    {
        // A quarter in each division, one after another; places between two ticks go to the nearer.
        var places = parts.SelectMany((n, i) => Enumerable.Range(0, n).Select(k => Beats.OfQuarters((i * n) + k, n))).Append(Beats.OfQuarters(parts.Length)).ToArray();
        var passage = Clean(File(1, division, Track(Head), Track([.. places.SkipLast(1).SelectMany((p, i) => Note(60 + i, Tick(p), Tick(places[i + 1])))])));
        Assert.Equal(
            places.SkipLast(1).Select((p, i) => (p, places[i + 1] - p)),
            passage.Heard(passage.Voices[0]).Select(n => (n.Start, n.Length)));

        long Tick(Beats place) => (long)Math.Round(place.Quarters * division);
    }

    [Fact]
    public void The_grid_begins_anew_with_every_bar_and_a_bar_line_is_on_it()
    {
        // Bars of 5/8: quarters from each bar's start; the last note comes 10 ticks before the third bar.
        var accepted = Accepted(File(
            1,
            Division,
            Track(Metre(0, 5, 8), Speed(0, 600_000)),
            Track([.. Note(72, 0, 480), .. Note(74, 480, 960), .. Note(76, 1200, 1680), .. Note(77, 1680, 2160), .. Note(79, 2390, 3000)])));
        Assert.Equal(["C5 0 +1", "D5 1 +1", "E5 5/2 +1", "F5 7/2 +1", "G5 5 +1"], Heard(accepted.Value));
    }

    [Fact]
    public void A_note_lasts_at_least_a_step_and_one_of_two_that_fall_together_is_left_out()
    {
        var accepted = Played([(60, 0, 3), (62, 480, 960), (62, 485, 960), (64, 960, 1440)]);
        Assert.Equal(["C4 0 +1", "D4 1 +1", "E4 2 +1"], Heard(accepted.Value));
        Assert.Contains("1 note falls together with another of the same pitch and is left out", accepted.Warnings.Select(w => w.Found));
    }

    [Fact]
    public void The_strokes_of_a_roll_are_gathered_where_the_last_falls()
    {
        // 48 ticks are 60 ms; the strokes ring on.
        var accepted = Played([(60, 0, 400), (67, 480, 900), (48, 960 - 144, 1900), (55, 960 - 96, 1900), (64, 960 - 48, 1900), (72, 960, 1440), (60, 1440, 1920)]);
        var passage = accepted.Value;
        Assert.Equal(["C3 2 +2", "G3 2 +2", "E4 2 +2", "C5 2 +1"], Heard(passage)[2..6]);
        Assert.Equal([48, 55, 64, 72], passage.Voices[0].Bars[0].Where(n => n.IsRolled).Select(n => n.Note.Midi));
        Assert.Contains("1 roll is gathered where the last stroke falls", accepted.Warnings.Select(w => w.Found));
    }

    [Fact]
    public void A_roll_may_run_downward()
    {
        var passage = Played([(84, 960 - 96, 1900), (79, 960 - 48, 1900), (48, 960, 1440), (50, 1440, 1920)]).Value;
        Assert.Equal(["C3 2 +1", "G5 2 +2", "C6 2 +2", "D3 3 +1"], Heard(passage));
    }

    [Theory]
    [InlineData(false, 60, 64, 67, 72)] // each note ends before the next begins
    [InlineData(true, 60, 62, 64, 65)] // steps of the scale
    [InlineData(true, 60, 72, 64, 67)] // up and down
    public void A_run_is_no_roll(bool isHeld, params int[] pitches)
    {
        // 60 ticks, 75 ms: 32nds at 100 a minute.
        var passage = Played([.. pitches.Select((p, i) => (p, 960L + (60 * i), isHeld ? 1920 : 960L + (60 * i) + 50)), (48, 1920, 2400)]).Value;
        Assert.Equal(pitches.Select((_, i) => Beats.OfQuarters(16 + i, 8)), passage.Heard(passage.Voices[0]).Take(4).Select(n => n.Start));
        Assert.DoesNotContain(passage.Voices[0].Bars[0], n => n.IsRolled);
    }

    [Fact]
    public void A_roll_into_the_first_beat_of_a_draft_is_gathered_on_it()
    {
        var passage = Accepted(MidiWriting.Bytes(SampleArrangements.RollIntoTheStart, MidiPitch.Written)).Value;

        // One quarter of lead-in is the first bar.
        Assert.Equal([1, 3], passage.Sheet.Bars.Take(2).Select(b => b.Length.Quarters));
        Assert.Equal(["Manual", "Pedal"], passage.Voices.Select(v => v.Name));
        Assert.Equal([71, 79, 55], passage.Voices.SelectMany(v => v.Bars[1]).Where(n => n.Start == Beats.Zero && n.IsRolled).Select(n => n.Note.Midi));
    }

    [Theory]
    [InlineData("title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | Am | F G7 | C ||\n")]
    [InlineData("title: Two Buoys\nkey: F\ntime: 6/8\ntempo: 70\n| F | C7 / | Dm Bb | C7 | F |\n")]
    [InlineData("title: Two Buoys\nkey: D\ntime: 3/4\ntempo: 125\n| D | A7 | Bm | G A7 A7 | D |\n")]
    public void A_draft_comes_through_with_every_stroke_on_its_beat_and_its_rolls_marked(string grid)
    {
        var sheet = Assert.IsType<Reading<LeadSheet>.Accepted>(ChordGridReader.Read("two-buoys.chords", grid)).Value;
        var arrangement = Assert.IsType<Drafting.Made>(Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, null, TestContext.Current.CancellationToken)).Arrangement;
        var passage = Accepted(MidiWriting.Bytes(arrangement, MidiPitch.Written)).Value;
        var leadIn = passage.Sheet.Length - passage.Sheet.Bars.SkipWhile(b => b.Meter != sheet.Bars[0].Meter).Aggregate(Beats.Zero, (sum, b) => sum + b.Length);

        Assert.Contains(arrangement.Strokes, s => s.Lead.Value > 0);
        Assert.Equal(
            arrangement.Strokes.Select(s => (s.Beat + leadIn, s.Note)).Order(),
            passage.Voices.SelectMany(v => passage.Heard(v)).Select(n => (n.Start, n.Note)).Order());
        Assert.Equal(
            arrangement.Choices.Where(c => c.Strokes.Any(s => s.Lead.Value > 0)).SelectMany(c => c.Strokes).Select(s => s.Note).Order(),
            passage.Voices.SelectMany(v => v.Bars).SelectMany(b => b).Where(n => n.IsRolled).Select(n => n.Note).Order());
        Assert.Equal(sheet.Tempo!.Value.QuartersPerMinute, passage.Sheet.Tempo!.Value.QuartersPerMinute);
        Assert.Equal(sheet.Key, passage.Sheet.Key);
        Assert.Equal(sheet.Title, passage.Sheet.Title);
    }

    private static Reading<Passage>.Accepted Played((int Pitch, long On, long Off)[] notes) =>
        Accepted(File(1, Division, Track(Head), Track([.. notes.SelectMany(n => Note(n.Pitch, n.On, n.Off))])));
}
