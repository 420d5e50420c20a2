using Revoicer.Bells;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Tests.Prices;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>What a wish allows, told from the strokes alone.</summary>
public sealed class WishRuleTests
{
    private static readonly PricedSheet Sheet = SmallSheets.Priced(
        SmallSheets.Sheet(["Cmaj7", "G7/B Am"]), ShippedTowers.Named("chapel-23"), ShippedSounds.Default);

    [Law(MaxTest = 300)]
    public void A_pin_allows_what_has_it_and_a_ban_the_rest(int seed)
    {
        var random = new Random(seed);
        var slot = Sheet.Plan.Slots[random.Next(Sheet.Plan.Slots.Count)];
        var thing = Thing(random, slot);
        var (pin, ban) = (Rule(slot, thing, isBan: false), Rule(slot, thing, isBan: true));
        foreach (var candidate in Sheet.Candidates[slot.Index])
        {
            var has = Has(slot, candidate, thing);
            Assert.Equal(has, pin.Allows(slot, candidate));
            Assert.Equal(!has, ban.Allows(slot, candidate));
        }
    }

    [Theory]
    [InlineData(2, 2, null, "2 1, 2 3")]
    [InlineData(2, 2, 3.0, "2 3")]
    [InlineData(1, 2, null, "1 1, 2 1, 2 3")]
    [InlineData(1, 1, 2.0, "")]
    public void It_concerns_the_chords_that_begin_at_its_place(int from, int to, double? beat, string places)
    {
        var rule = new WishRule(new Wish(Place.WholeFile("w"), new WishedPlace(from, to, beat), new WishedThing.LowestTone(1), false));
        Assert.Equal(places, string.Join(", ", Sheet.Plan.Slots.Where(rule.Concerns).Select(s => $"{s.Bar} {s.BeatNumber}")));
    }

    private static WishRule Rule(Slot slot, WishedThing thing, bool isBan) =>
        new(new Wish(Place.WholeFile("w"), new WishedPlace(slot.Bar, slot.Bar, slot.BeatNumber), thing, isBan));

    // Mostly what some candidate has, so that both answers come up.
    private static WishedThing Thing(Random random, Slot slot)
    {
        var candidates = Sheet.Candidates[slot.Index];
        var strokes = candidates[random.Next(candidates.Count - 1)].Strokes;
        var note = strokes[random.Next(strokes.Count)].Note;
        return random.Next(8) switch
        {
            0 => new WishedThing.BassBell(null),
            1 => new WishedThing.BassBell(note),
            2 => new WishedThing.LeftHandTop(null),
            3 => new WishedThing.LeftHandTop(note),
            4 => new WishedThing.OneBell(note),
            5 => new WishedThing.WholeVoicing(Bells(strokes)),
            6 => new WishedThing.LowestTone(1 + (2 * random.Next(4))),
            _ => new WishedThing.FigureNamed(FigureNames.All[random.Next(FigureNames.All.Count)]),
        };
    }

    private static bool Has(Slot slot, Candidate candidate, WishedThing thing)
    {
        WrittenNote[] feet = [.. candidate.Strokes.Where(s => s.IsPedal).Select(s => s.Note).Order()];
        WrittenNote[] left = [.. candidate.Strokes.Where(s => s.Limb == Limb.LeftHand).Select(s => s.Note).Order()];
        var bells = Bells(candidate.Strokes);
        return thing switch
        {
            WishedThing.BassBell { Note: null } => feet.Length == 0,
            WishedThing.BassBell bass => feet.Length > 0 && feet[0] == bass.Note,
            WishedThing.LeftHandTop { Note: null } => left.Length == 0,
            WishedThing.LeftHandTop top => left.Length > 0 && left[^1] == top.Note,
            WishedThing.OneBell bell => bells.Contains(bell.Note),
            WishedThing.WholeVoicing whole => bells == whole.Notes,
            WishedThing.LowestTone tone => bells.Count > 0 && slot.Symbol.Tones.Any(t => t.Degree.Number == tone.Degree && t.PitchClass == bells[0].PitchClass),
            WishedThing.FigureNamed figure => FigureNames.Of(candidate.Figure) == figure.Name,
            _ => throw new InvalidOperationException($"{thing}"),
        };
    }

    private static Items<WrittenNote> Bells(IEnumerable<SlotStroke> strokes) => strokes.Select(s => s.Note).Distinct().Order().ToItems();
}
