using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>Chooses between two layouts of one sheet.</summary>
public static class LayoutChoosing
{
    /// <summary>
    /// The draft whose price, with what the tune costs with itself, is lower; the first on a tie. It tells of the other. A
    /// layout that cannot be played, or not as the player wishes, leaves the other; where neither can, both say why.
    /// </summary>
    /// <param name="first">The sheet in one layout; with a tune if it is made.</param>
    /// <param name="second">The same in the other.</param>
    public static Drafting Cheaper(Drafting first, Drafting second) => (first, second) switch
    {
        (Drafting.Made a, Drafting.Made b) => PriceOf(b) < PriceOf(a) ? Telling(b, a) : Telling(a, b),
        (Drafting.Made a, Drafting.OutOfTime) => CutShort(a),
        (Drafting.OutOfTime, Drafting.Made b) => CutShort(b),
        (Drafting.Made a, _) => Telling(a, second.Why[0]),
        (_, Drafting.Made b) => Telling(b, first.Why[0]),
        (Drafting.Unmet or Drafting.Astray or Drafting.NoChords, _) => first,
        (_, Drafting.Unmet) => second,
        (Drafting.OutOfTime, _) => first,
        (_, Drafting.OutOfTime) => second,
        (Drafting.Ruled a, _) => new Drafting.Ruled(a.Reasons.Union(second.Why).ToItems()),
        (_, Drafting.Ruled b) => new Drafting.Ruled(first.Why.Union(b.Reasons).ToItems()),
        (Drafting.Unplayable a, Drafting.Unplayable b) => new Drafting.Unplayable(a.Reasons.Union(b.Reasons).ToItems()),
        _ => throw new InvalidOperationException("a draft is made, or both layouts say why not"),
    };

    // There was no time to look at the other layout.
    private static Drafting.Made CutShort(Drafting.Made made) =>
        made with { Arrangement = made.Arrangement with { Status = made.Arrangement.Status with { WasCutShort = true } } };

    private static long PriceOf(Drafting.Made made) => LayoutOf(made).Price;

    private static ChosenLayout LayoutOf(Drafting.Made made) =>
        made.Arrangement.Layout ?? throw new ArgumentException("an arrangement without a tune has no layout", nameof(made));

    private static Drafting.Made Telling(Drafting.Made chosen, Drafting.Made other)
    {
        var totals = other.Arrangement.Totals;
        return With(chosen, LayoutOf(chosen) with { Other = new OtherLayout(PriceOf(other), totals.ClashDose, totals.TuneDose, totals.MedianClash) });
    }

    private static Drafting.Made Telling(Drafting.Made chosen, string obstacle) =>
        With(chosen, LayoutOf(chosen) with { Obstacle = obstacle });

    private static Drafting.Made With(Drafting.Made made, ChosenLayout layout) => made with { Arrangement = made.Arrangement with { Layout = layout } };
}
