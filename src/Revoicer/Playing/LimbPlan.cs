using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>
/// Finds limbs for a line of single notes, as a tune is, by the least effort: the limb to which a note costs least where
/// it has time, another where it has not. A small dynamic programme over the notes; what is remembered of the resting
/// limbs is where they last struck, as far back as a move can matter.
/// </summary>
public sealed class LimbPlan
{
    // Estimate, in the unit of effort: a note in no time.
    private const double NoTime = 1000;

    // How many notes back a resting limb's last place is remembered; older ones leave it time for any move.
    private const int Memory = 6;
    private const int Ages = Memory + 1;

    private readonly Reach _reach;
    private readonly LineLimbs _limbs;
    private readonly IReadOnlyList<LineNote> _line;
    private readonly int _statesOfLimb;

    private LimbPlan(Reach reach, LineLimbs limbs, IReadOnlyList<LineNote> line)
    {
        _reach = reach;
        _limbs = limbs;
        _line = line;
        _statesOfLimb = (int)Math.Pow(Ages, limbs.All.Count - 1);
    }

    /// <summary>One limb for each note.</summary>
    /// <param name="reach">What limbs can do in which time.</param>
    /// <param name="limbs">The limbs that share the line.</param>
    /// <param name="line">The notes in order of time; each can be taken by one of the limbs at least.</param>
    /// <exception cref="ArgumentException">No limb can take one of the notes.</exception>
    public static Items<Limb> Of(Reach reach, LineLimbs limbs, IReadOnlyList<LineNote> line)
    {
        foreach (var note in line.Where(n => !limbs.Take(n.Note)))
        {
            throw new ArgumentException($"none of {string.Join(", ", limbs.All.Select(LimbNames.Of))} can take {note.Note}", nameof(line));
        }

        return line.Count == 0 ? [] : new LimbPlan(reach, limbs, line).Solve();
    }

    /// <summary>The effort of given limbs: what <see cref="Of"/> makes least.</summary>
    internal static double EffortOf(Reach reach, LineLimbs limbs, IReadOnlyList<LineNote> line, IReadOnlyList<Limb> taken)
    {
        var plan = new LimbPlan(reach, limbs, line);
        return line.Select((_, i) => plan.Price(taken[i], i, Enumerable.Range(0, i).Where(j => taken[j] == taken[i]).DefaultIfEmpty(-1).Last())).Sum();
    }

    // A state is the limb of the note at hand, and for every other limb how many notes before that it struck (0: too long
    // ago to matter), one digit each.
    private Items<Limb> Solve()
    {
        var states = _limbs.All.Count * _statesOfLimb;
        var cost = new double[states];
        var from = new int[_line.Count][];
        Array.Fill(cost, double.PositiveInfinity);
        for (var limb = 0; limb < _limbs.All.Count; limb++)
        {
            cost[limb * _statesOfLimb] = Price(_limbs.All[limb], 0, -1);
        }

        for (var i = 1; i < _line.Count; i++)
        {
            var next = new double[states];
            Array.Fill(next, double.PositiveInfinity);
            from[i] = new int[states];
            for (var before = 0; before < states; before++)
            {
                Extend(i, before, cost[before], next, from[i]);
            }

            cost = next;
        }

        var limbs = new Limb[_line.Count];
        var end = Array.IndexOf(cost, cost.Min());
        for (var i = _line.Count - 1; i >= 0; i--)
        {
            limbs[i] = _limbs.All[end / _statesOfLimb];
            end = i > 0 ? from[i][end] : end;
        }

        return limbs.ToItems();
    }

    private void Extend(int i, int before, double cost, double[] costs, int[] from)
    {
        if (double.IsPositiveInfinity(cost))
        {
            return;
        }

        Span<int> ago = stackalloc int[_limbs.All.Count];
        Read(before, ago);
        for (var limb = 0; limb < ago.Length; limb++)
        {
            var state = StateAfter(ago, limb);
            var price = cost + Price(_limbs.All[limb], i, ago[limb] == 0 ? -1 : i - ago[limb]);
            if (price < costs[state])
            {
                costs[state] = price;
                from[state] = before;
            }
        }
    }

    // For each limb how many notes before the next it struck: 1 for that of the state; 0 for too long ago.
    private void Read(int state, Span<int> ago)
    {
        var digits = state % _statesOfLimb;
        for (var limb = 0; limb < ago.Length; limb++)
        {
            if (limb == state / _statesOfLimb)
            {
                ago[limb] = 1;
                continue;
            }

            ago[limb] = digits % Ages is var digit and > 0 ? digit + 1 : 0;
            digits /= Ages;
        }
    }

    private int StateAfter(ReadOnlySpan<int> ago, int striking)
    {
        var (digits, place) = (0, 1);
        for (var limb = 0; limb < ago.Length; limb++)
        {
            if (limb != striking)
            {
                digits += (ago[limb] > Memory ? 0 : ago[limb]) * place;
                place *= Ages;
            }
        }

        return (striking * _statesOfLimb) + digits;
    }

    // The price of a note to a limb that struck another note last (-1: long ago).
    private double Price(Limb limb, int note, int last)
    {
        var price = _limbs.PriceOf(limb, _line[note].Note);
        if (last < 0)
        {
            return price;
        }

        var has = _line[note].At - _line[last].At;
        var (a, b) = (_line[last].Note, _line[note].Note);
        return price
            + Effort.OfHurry(has, _reach.EasyMoveTime(limb, a, b))
            + (has.Value + 1e-6 < _reach.MoveTime(limb, a, b).Value ? NoTime : 0);
    }
}
