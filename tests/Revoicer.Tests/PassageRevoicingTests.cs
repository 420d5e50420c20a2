using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.LeadSheets;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests;

public class PassageRevoicingTests
{
    private const string Head = "X:1\nT:Quay\nM:4/4\nL:1/4\nQ:1/4=60\nK:C\n";

    // Every voice has the tune once, and the top line of all voices in one.
    [Fact]
    public void Every_note_of_every_hymn_is_the_tunes_or_stands_in_a_slot_or_is_told()
    {
        foreach (var (name, passage) in Hymns.All())
        {
            foreach (var (from, voice) in passage.Voices.Select(v => (passage, (string?)v.Name)).Append((InOneVoice(passage), null)))
            {
                var lost = Unaccounted(from, voice);
                Assert.True(lost.Length == 0, $"{name}, {voice ?? "top line"}: {string.Join(", ", lost.Select(n => $"{n.Note} at {n.Start}"))}; {string.Join("; ", from.Voices.SelectMany(from.Heard).Where(n => lost.Any(l => n.Start <= l.Start && n.End > l.Start)))}");
            }
        }
    }

    // A tie across a repeat: E is held over from the bar before it the first time, and struck the second.
    [Fact]
    public void What_only_a_repeat_strikes_stands_in_the_slot_too()
    {
        var passage = Passage("V:1\n\"C\"c4|:\"Am\"a4|\"F\"f4:|]\nV:2\nE4-|:E4|F4:|]\n");
        var plan = Plan(passage, null).Plan;
        Assert.Contains(plan.Slots, s => s.Hearings.Count == 2 && s.Original!.Notes.Any(n => n.Note.PitchClass == PitchClass.Of(4)));
        Assert.Empty(Unaccounted(passage, null));
    }

    [Fact]
    public void A_chord_whose_bell_was_struck_twice_has_not_stayed_when_it_is_struck_once()
    {
        var twice = new OriginalChord([new(Note(60), Beats.Zero), new(Note(64), Beats.Zero), new(Note(60), Beats.OfQuarters(1))], 1);
        Assert.Equal(0.5, twice.DistanceTo(Candidate((60, 0), (64, 0))));
        Assert.Equal(0, twice.DistanceTo(Candidate((60, 0), (64, 0), (60, 1))));
        Assert.Equal(0.5, twice.DistanceTo(Candidate((60, 0), (64, 0), (60, 2))));
        Assert.Equal(1, twice.DistanceTo(Candidate((60, 0), (60, 1))));
        Assert.Equal(0.5, twice.DistanceTo(Candidate((60, 0), (76, 0), (60, 1))));
    }

    [Fact]
    public void Notes_where_no_chord_stands_are_said_to_be_left_out()
    {
        var passage = Passage("V:1\n\"C\"c2 \"N.C.\"d2|\"G\"g4|]\nV:2\nE2 F2|D4|]\n");
        var revoicing = PassageRevoicing.Of(passage, null)!;
        var made = Assert.IsType<Drafting.Made>(Revoicing.Draft(
            revoicing.Sheet, ShippedTowers.Default, ShippedSounds.Default, revoicing.Close(DraftWish.None, 0), null, TestContext.Current.CancellationToken)).Arrangement;
        Assert.Equal(["bar 1: what stood under the tune where there is no chord is left out"], revoicing.Told(made).Totals.LeftOut);
    }

    // README: "a tune alone that has none is not harmonised".
    [Theory]
    [InlineData("V:1\nc d e f|g4|]\n", true)]
    [InlineData("V:1\n\"C\"c d e f|\"G\"g4|]\n", false)]
    [InlineData("V:1\nc d e f|g4|]\nV:2\nC D E F|G4|]\n", false)]
    [InlineData("V:1\nc d e [Gf]|[DBg]4|]\n", false)]
    public void A_tune_alone_without_chords_is_bare(string music, bool isBare) =>
        Assert.Equal(isBare, PassageRevoicing.Of(Passage(music), null)!.IsBareTune);

    [Fact]
    public void No_chord_is_found_in_a_tune_alone_before_its_first_symbol()
    {
        var sheet = PassageRevoicing.Of(Passage("V:1\nc e g c'|\"G\"g4|]\n"), null)!.Sheet;
        Assert.All(sheet.Bars[0].Chords, c => Assert.Null(c.Symbol));
    }

    // The notes that are in no slot, not struck by the tune, and not under a bar that is told as left out.
    private static HeardNote[] Unaccounted(Passage passage, string? voice)
    {
        if (Plan(passage, voice) is not ({ Tune: { } tune } plan, var revoicing))
        {
            return [];
        }

        var octaves = new Interval(tune.Octaves * 12);
        var struck = tune.Strokes.Select(s => (s.Start, s.Note)).ToHashSet();
        var stood = plan.InTime().SelectMany(h => h.Slot.Original!.Notes, (h, n) => (h.Hearing.Start + n.After, n.Note)).ToHashSet();
        var chords = plan.InTime().Select(h => (From: h.Hearing.Start, To: h.Hearing.Start + h.Slot.Length)).ToArray();
        var tuneNotes = HeardTune.Of(revoicing.Sheet);
        return
        [
            .. passage.Voices.SelectMany(passage.Heard).Where(n =>
                !struck.Contains((n.Start, n.Note + octaves))
                && !stood.Contains((n.Start, n.Note + octaves))
                && chords.Any(c => n.Start >= c.From && n.Start < c.To)
                && !(tune.Told.Count > 0 && tuneNotes.Any(t => t.Start == n.Start && t.Note == n.Note))),
        ];
    }

    private static (SlotPlan Plan, PassageRevoicing Revoicing) Plan(Passage passage, string? voice)
    {
        var instrument = new Instrument(ShippedTowers.Named("great-56"), ShippedSounds.Default);
        var revoicing = PassageRevoicing.Of(passage, voice)!;
        var tempi = SheetTempi.Of(revoicing.Sheet);
        var tune = new TunePlacing(revoicing.Sheet, instrument.Tower, instrument.Reach, tempi, ease: false).All().FirstOrDefault();
        return (revoicing.Close(DraftWish.None, 0).Original!.In(SlotCutting.Cut(revoicing.Sheet, tempi, tune)), revoicing);
    }

    private static Passage InOneVoice(Passage passage) => new(passage.Sheet, [new PassageVoice("all", passage.Sheet.Bars
        .Select((_, bar) => passage.Voices.SelectMany(v => v.Bars[bar]).OrderBy(n => n.Start).ThenBy(n => n.Note).ToItems())
        .ToItems())]);

    private static Candidate Candidate(params (int Midi, int After)[] strokes) => new(
        Figure.AsItWas,
        new Voicing(null, null, []),
        strokes.Select(s => new SlotStroke(Note(s.Midi), Revoicer.Playing.Limb.LeftHand, Beats.OfQuarters(s.After), 0)).ToItems());

    private static WrittenNote Note(int midi) => WrittenNote.AtMidi(midi);

    private static Passage Passage(string music) =>
        Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage("quay.abc", Head + music, SheetChoice.First)).Value;
}
