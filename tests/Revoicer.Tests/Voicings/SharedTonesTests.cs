using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Tests.Prices;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>Which tones a chord may leave to the chord before it, by hand; four bars are a phrase.</summary>
public sealed class SharedTonesTests
{
    [Theory]
    [InlineData(120, "| C Am F Dm | G C Em F | G C | C |", "1.2 Am E; 1.3 F C; 1.4 Dm A; 2.1 G D; 2.2 C G")]
    [InlineData(120, "| C Am | Am F | C | C |", "1.3 Am E; 2.3 F C")] // not where the chord goes on
    [InlineData(120, "| C C/E | Am Am/C | F | C |", "1.3 C/E G; 2.1 Am E; 2.3 Am/C E")] // the root is struck, and so is another bass
    [InlineData(120, "| C Dm | G7 C | F C | C |", "2.1 G7 D; 2.3 C G; 3.1 F C")] // the seventh F has to go to E
    [InlineData(120, "| C Dm | G7 Am | F C | C |", "2.1 G7 D F; 3.1 F C")] // but not where no C follows
    [InlineData(120, "| C C7 | Csus4 C | F C | C |", "1.3 C7 E G; 2.1 Csus4 G; 2.3 C G; 3.1 F C")] // where the root stays the third may ring
    [InlineData(120, "| C Am | N.C. F | G C | C |", "1.3 Am E")] // what no chord follows is over
    [InlineData(80, "| C Am | F Dm | G C | C |", "1.3 Am E; 2.1 F C; 2.3 Dm A")] // 1.5 s each
    [InlineData(79, "| C Am | F Dm | G C | C |", "")]
    [InlineData(120, "| C Am F F | Dm | Am C | C |", "1.2 Am E; 1.3 F C")] // 1 s, 0.5 s, 1 s, 2 s, 1 s, ...
    public void A_chord_shares_what_the_chord_before_has_too(int tempo, string bars, string shared) =>
        Assert.Equal(shared, Shared(Sheets.Plan("4/4", tempo, bars)));

    [Fact]
    public void The_chords_that_begin_and_end_a_phrase_are_struck_whole()
    {
        var plan = Sheets.Plan("4/4", 160, "| C | Em | Am | F | Am | C | Em | C |");
        Assert.True(plan.Slots[4].BeginsPhrase);
        Assert.True(plan.Slots[3].IsCadence);
        Assert.Equal("3.1 Am E", Shared(plan));
    }

    // Am7 is heard after the first bar and after the third: Em and C have E and G in common with it, F has neither.
    [Theory]
    [InlineData("C Em", "Am7 E G")]
    [InlineData("C F", "Am7 ")]
    public void A_chord_heard_again_shares_what_it_shares_every_time(string firstBar, string shared)
    {
        var sheet = SmallSheets.Sheet([firstBar, "Am7 G", "Dm C", "F C"], [0, 1, 2, 1, 2, 3]);
        var plan = SlotCutting.Cut(sheet, TempoMap.Steady(new Tempo(Beats.OfQuarters(1), 120)));
        Assert.Equal(2, plan.Slots[2].Hearings.Count);
        Assert.Equal(shared, $"{plan.Slots[2].Symbol} {Names(plan.Slots[2], plan.Slots[2].Shared)}");
    }

    [Theory]
    [InlineData("A3", "")] // no hand
    [InlineData("A3 C5", "E")]
    [InlineData("A3 E5", "")]
    [InlineData("A3 C5 C6", "")] // where C is struck twice E could be struck
    [InlineData("A3 C5 E5", "")]
    public void A_voicing_leaves_what_it_does_not_strike(string notes, string left)
    {
        var slot = Sheets.Plan("4/4", 120, "| C Am | F C | G C | C |").Slots[1];
        var bells = notes.Split(' ').Select(n => NoteSpelling.TryMidi(n, out var midi) ? WrittenNote.AtMidi(midi) : default).ToArray();
        var voicing = new Voicing(bells[0], null, bells.Skip(1).Select(n => new Baton(n, Limb.LeftHand)).ToItems());
        Assert.Equal(left, Names(slot, slot.LeftRinging(voicing)));
    }

    [Theory]
    [InlineData(76, 0.25, "")] // E stood there
    [InlineData(72, 0.25, "E")]
    [InlineData(76, 0, "E")]
    public void Music_that_stays_close_strikes_what_it_struck(int midi, double closeness, string shared)
    {
        var note = new HeardNote(WrittenNote.AtMidi(midi), NoteName.AtFifths(0), Beats.OfQuarters(2), Beats.OfQuarters(2), 0, 1);
        var plan = new OriginalNotes([note], closeness).In(Sheets.Plan("4/4", 120, "| C Am | F C | G C | C |"));
        Assert.Equal(shared, Names(plan.Slots[1], plan.Slots[1].Shared));
    }

    // "1.3 Am C E": bar and beat, chord, the tones upward from its root.
    private static string Shared(SlotPlan plan) => string.Join("; ", plan.Slots
        .Where(slot => slot.Shared.Count > 0)
        .Select(slot => FormattableString.Invariant($"{slot.Bar}.{slot.BeatNumber} {slot.Symbol} {Names(slot, slot.Shared)}")));

    private static string Names(Slot slot, PitchClassSet tones) =>
        string.Join(' ', slot.Symbol.Tones.Where(t => tones.Contains(t.PitchClass)).Select(t => t.Name));
}
