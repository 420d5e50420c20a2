using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>A note of a given line that a hand is to be found for.</summary>
/// <param name="Note">The baton.</param>
/// <param name="At">When it is struck.</param>
public readonly record struct LineNote(WrittenNote Note, Seconds At);

/// <summary>
/// Finds hands for a line of single notes, as a tune is, by the least effort: the right hand where it has time, the left
/// where it has not. A small dynamic programme over the notes; what is remembered of the resting hand is where it last
/// struck, as far back as a move can matter.
/// </summary>
public sealed class HandPlan
{
    // Estimates, in the unit of effort: a note for the left hand, which is wanted elsewhere; a note in no time.
    private const double LeftHand = 3;
    private const double NoTime = 1000;

    // How many notes back the resting hand's last place is remembered; older ones leave it time for any move.
    private const int Memory = 6;

    private readonly Reach _reach;
    private readonly IReadOnlyList<LineNote> _line;

    private HandPlan(Reach reach, IReadOnlyList<LineNote> line)
    {
        _reach = reach;
        _line = line;
    }

    /// <summary>One hand for each note.</summary>
    /// <param name="reach">The limits of hands.</param>
    /// <param name="line">The notes in order of time.</param>
    public static Items<Limb> Of(Reach reach, IReadOnlyList<LineNote> line) => line.Count == 0 ? [] : new HandPlan(reach, line).Solve();

    /// <summary>The effort of given hands: what <see cref="Of"/> makes least.</summary>
    internal static double EffortOf(Reach reach, IReadOnlyList<LineNote> line, IReadOnlyList<Limb> hands)
    {
        var plan = new HandPlan(reach, line);
        return line.Select((_, i) => plan.Price(hands[i], i, Enumerable.Range(0, i).Where(j => hands[j] == hands[i]).DefaultIfEmpty(-1).Last())).Sum();
    }

    // A state is the hand of the note at hand, and how many notes ago the other hand struck (0: too long ago to matter).
    private Items<Limb> Solve()
    {
        const int states = 2 * (Memory + 1);
        var cost = new double[_line.Count][];
        var from = new int[_line.Count][];
        for (var i = 0; i < _line.Count; i++)
        {
            cost[i] = [.. Enumerable.Repeat(double.PositiveInfinity, states)];
            from[i] = new int[states];
            if (i == 0)
            {
                cost[0][State(Limb.RightHand, 0)] = 0;
                cost[0][State(Limb.LeftHand, 0)] = LeftHand;
                continue;
            }

            for (var before = 0; before < states; before++)
            {
                Extend(i, before, cost[i - 1][before], cost[i], from[i]);
            }
        }

        var hands = new Limb[_line.Count];
        var end = Array.IndexOf(cost[^1], cost[^1].Min());
        for (var i = _line.Count - 1; i >= 0; i--)
        {
            hands[i] = HandOf(end);
            end = from[i][end];
        }

        return hands.ToItems();
    }

    private void Extend(int i, int before, double cost, double[] costs, int[] from)
    {
        if (double.IsPositiveInfinity(cost))
        {
            return;
        }

        var (hand, otherAgo) = (HandOf(before), before % (Memory + 1));
        var stay = State(hand, otherAgo is 0 or Memory ? 0 : otherAgo + 1);
        Keep(stay, cost + Price(hand, i, i - 1));

        var other = hand == Limb.LeftHand ? Limb.RightHand : Limb.LeftHand;
        Keep(State(other, 1), cost + Price(other, i, otherAgo == 0 ? -1 : i - 1 - otherAgo));

        void Keep(int state, double price)
        {
            if (price < costs[state])
            {
                costs[state] = price;
                from[state] = before;
            }
        }
    }

    // The price of a note in a hand that struck another note last (-1: long ago).
    private double Price(Limb hand, int note, int last)
    {
        var price = hand == Limb.LeftHand ? LeftHand : 0;
        if (last < 0)
        {
            return price;
        }

        var has = _line[note].At - _line[last].At;
        var (a, b) = (_line[last].Note, _line[note].Note);
        return price
            + Effort.OfHurry(has, _reach.EasyMoveTime(hand, a, b))
            + (has.Value + 1e-6 < _reach.MoveTime(hand, a, b).Value ? NoTime : 0);
    }

    private static int State(Limb hand, int otherAgo) => ((hand == Limb.LeftHand ? 0 : 1) * (Memory + 1)) + otherAgo;

    private static Limb HandOf(int state) => state <= Memory ? Limb.LeftHand : Limb.RightHand;
}
