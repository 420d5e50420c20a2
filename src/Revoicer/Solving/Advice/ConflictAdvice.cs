using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Advice;

/// <summary>Puts into words what cannot be kept together, and what would help.</summary>
/// <param name="prices">The priced slots.</param>
/// <param name="slower">Finds the tempo that would do.</param>
/// <param name="perMinute">The tempo now, in beats of the metre a minute.</param>
/// <param name="rollStep">From one stroke of a roll to the next.</param>
public sealed class ConflictAdvice(SheetPrices prices, SlowerTempo slower, double perMinute, Seconds rollStep)
{
    /// <summary>What a conflict comes to: a problem at the first wish in it, or, where there is none in it, a sentence.</summary>
    /// <param name="conflict">The conflict.</param>
    public (Problem? AtWish, string Sentence) Of(Conflict conflict)
    {
        WishRule[] wishes = [.. conflict.Rules.OfType<WishRule>()];
        var tempo = slower.For(conflict.Rules, perMinute, prices.Plan.Tune);
        var (found, help) = conflict.Slot is { } slot
            ? OnSlot(slot, wishes, tempo)
            : (Over(conflict.Rules, conflict.Stretch), OneLeftOut(wishes));
        string?[] ways = [help, tempo is { } slow ? $"--tempo {slow}" : null, .. conflict.Rules.Select(Eased).Distinct()];

        // Where nothing is sure to help, what mostly does.
        var expected = ways.All(w => w is null) && wishes.Length == 0
            ? "another key (--key best), a slower tempo, or chords that stand longer there"
            : string.Join(", or ", ways.OfType<string>());
        return wishes.Length == 0
            ? (null, expected.Length == 0 ? found : $"{found}; what would help: {expected}")
            : (new Problem(wishes[0].Wish.Where, found, expected.Length == 0 ? "another wish" : expected), "");
    }

    private (string Found, string? Help) OnSlot(Slot slot, WishRule[] wishes, int? tempo)
    {
        if (wishes.Length > 1)
        {
            return ($"no voicing of {slot.Symbol} meets these together: {List(wishes)}", OneLeftOut(wishes));
        }

        var unmet = new UnmetWish(prices.Instrument.Tower, slot, prices.Candidates(slot.Index), prices.Plan.Tune);
        var wish = wishes[0].Wish;
        return ($"{wish.Words} cannot be had ({slot.Symbol} at {slot.Place}): {unmet.Against(wish, tempo)}", unmet.Nearest(wish));
    }

    // What makes a rule ask for less, as none of those that clash can be kept beside the others.
    private static string? Eased(Rule rule) => rule switch
    {
        CarryAtLeast => "a lower at-least under [carry] of the sound",
        BassOnStrongBeats => "a lower strong-beats under [bass] of the sound",
        OneFigure => "a higher one-figure under [figures] of the sound",
        ApproachesPerPhrase => "a higher approaches-in-phrase under [bass] of the sound",
        RollsPerPhrase => "a higher rolls-in-phrase under [figures] of the sound",
        HeavyStrokes => "a higher heavy_strokes_in_10_s in the tower's file, if you can play it",
        OtherBells or AsBefore => "the draft without --another and --vary-repeats",
        _ => null,
    };

    private static string Place((Slot From, Slot To) stretch) => stretch.From.Index == stretch.To.Index
        ? $"at {stretch.From.Place} ({stretch.From.Symbol}) "
        : $"from {stretch.From.Place} ({stretch.From.Symbol}) to {stretch.To.Place} ({stretch.To.Symbol}) ";

    private string Over(Items<Rule> rules, (Slot From, Slot To)? stretch)
    {
        var breach = rules.Any(r => r is TimeToMove) ? Breach(rules) : null;
        return $"{(stretch is { } place ? Place(place) : "")}these cannot all be kept: {List(rules)}{(breach is null ? "" : $" ({breach})")}";
    }

    private static string? OneLeftOut(WishRule[] wishes) => wishes.Length switch
    {
        0 => null,
        1 => "this wish left out",
        _ => "one of these wishes left out",
    };

    private static string List(IEnumerable<Rule> rules) => string.Join("; ", rules.Select(r => r is WishRule wish
        ? $"{wish.Wish.Words} (line {wish.Wish.Where.Line})"
        : r.Words));

    // What the checker says of the simplest voicings that the rules leave for two chords which cannot follow each other.
    private string? Breach(Items<Rule> rules)
    {
        SlotRule[] onSlots = [.. rules.OfType<SlotRule>()];
        var strokes = prices.Plan.InTime()
            .Where(h => onSlots.Any(r => r.Concerns(h.Slot)))
            .SelectMany(h => Strokes(h.Slot, h.Hearing, Simplest(h.Slot, onSlots)));
        return new Checker(prices.Instrument.Tower).Check(strokes).FirstOrDefault() is { } breach
            ? $"{breach.Sentence}, limit {breach.Limit}"
            : null;
    }

    private Candidate Simplest(Slot slot, SlotRule[] rules) => prices.Candidates(slot.Index)
        .Where(c => rules.OfType<WishRule>().All(r => !r.Concerns(slot) || r.Allows(slot, c)))
        .OrderBy(c => rules.Count(r => r.Concerns(slot) && !r.Allows(slot, c)))
        .ThenBy(c => c.Strokes.Count)
        .First();

    private IEnumerable<Stroke> Strokes(Slot slot, Hearing hearing, Candidate candidate) => candidate.Strokes.Select(s => new Stroke(
        s.Note,
        s.Limb,
        hearing.Start + s.After,
        Seconds.Zero,
        hearing.At + new Seconds((s.After.Quarters * slot.Duration.Value / slot.Length.Quarters) - (s.LeadSteps * rollStep.Value)),
        Decibels.Zero));
}
