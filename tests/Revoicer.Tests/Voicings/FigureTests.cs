using Revoicer.Bells;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

/// <summary>
/// When each figure strikes C3 on the left foot, E4 in the left and G4 in the right hand, in quarter notes from the start of
/// the slot; "-2" is two steps of a roll before.
/// </summary>
public sealed class FigureTests
{
    private const string Together = "together: C3 0, E4 0, G4 0";
    private const string Rolled = "rolled: C3 0 -2, E4 0 -1, G4 0";

    [Fact]
    public void In_a_bar_of_four() => Expect(
        "4/4",
        100,
        "| C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 1, G4 1",
        "afterbeats: C3 0, E4 1, G4 1, E4 3, G4 3",
        "broken: C3 0, E4 1, G4 2");

    [Fact]
    public void In_a_bar_of_three() => Expect(
        "3/4",
        100,
        "| C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 1, G4 1",
        "afterbeats: C3 0, E4 1, G4 1, E4 2, G4 2",
        "broken: C3 0, E4 1, G4 2");

    [Fact]
    public void In_a_bar_of_two_dotted_quarters() => Expect(
        "6/8",
        50,
        "| C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 3/2, G4 3/2");

    [Fact]
    public void In_a_bar_of_four_dotted_quarters() => Expect(
        "12/8",
        60,
        "| C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 3/2, G4 3/2",
        "afterbeats: C3 0, E4 3/2, G4 3/2, E4 9/2, G4 9/2",
        "broken: C3 0, E4 3/2, G4 3");

    [Fact]
    public void In_a_slot_of_one_beat_nothing_comes_between_the_beats() => Expect(
        "4/4", 60, "| C G G G | G |", Together, Rolled);

    [Fact]
    public void The_last_chord_may_come_after_its_bass_however_short_it_is_written() => Expect(
        "4/4", 60, "| G G G C |", Together, Rolled, "bass first: C3 0, E4 1/2, G4 1/2");

    [Fact]
    public void A_quick_slot_is_struck_together() => Expect("4/4", 100, "| C G F G | C |", Together);

    [Fact]
    public void Bells_that_have_not_recovered_rule_afterbeats_out() => Expect(
        // A beat of 0.3 s; E4 and G4 need 0.35 (playing-limits.tsv, recovery_60_71_s).
        "3/4",
        200,
        "| C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 1, G4 1",
        "broken: C3 0, E4 1, G4 2");

    [Fact]
    public void The_last_chord_is_struck_once_or_its_bass_first() => Expect("4/4", 100, "| C |", Together, Rolled, "bass first: C3 0, E4 1, G4 1");

    [Fact]
    public void From_a_weak_beat_there_are_no_afterbeats() => Expect(
        "4/4",
        100,
        "| G C C C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 1, G4 1",
        "broken: C3 0, E4 1, G4 2");

    // Anticipated by a beat of 0.6 s the chord stands over a bar with two weak beats, and still begins on a weak one.
    [Fact]
    public void An_anticipated_chord_has_no_afterbeats() => Expect(
        "4/4",
        100,
        "| G G G C | C | G |",
        Together,
        Rolled,
        "bass first: C3 0, E4 1, G4 1",
        "broken: C3 0, E4 1, G4 2");

    private static void Expect(string time, int tempo, string bars, params string[] figures)
    {
        var tower = ShippedTowers.Default;
        var search = new CandidateSearch(tower, new Reach(PlayingLimits.For(tower), tower.Transposition), new Seconds(0.06));
        var slot = Sheets.Plan(time, tempo, bars).Slots.First(s => s.Symbol.ToString() == "C");
        string[] bells = ["LeftFoot C3", "LeftHand E4", "RightHand G4"];

        var found = search.List(slot)
            .Where(c => bells.SequenceEqual(c.Strokes.Select(s => $"{s.Limb} {s.Note}").Distinct()))
            .Select(c => $"{FigureNames.Of(c.Figure)}: {string.Join(", ", c.Strokes.Select(Text))}");

        Assert.Equal(figures, found);
    }

    private static string Text(SlotStroke stroke) =>
        $"{stroke.Note} {stroke.After}{(stroke.LeadSteps == 0 ? "" : $" -{stroke.LeadSteps}")}";
}
