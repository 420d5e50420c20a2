using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>
/// Finds limbs for a passage of several notes at a time by the least effort: which notes the feet take, which the left hand
/// and which the right. A dynamic programme over the places of the passage; what is remembered of a limb is what it took last.
/// Where nothing is playable the least is broken, and the <see cref="Checker"/> tells what.
/// </summary>
public sealed class PassageLimbs
{
    // Caps: so many ways to take one chord are followed (the cheapest by themselves), so many states from chord to chord
    // (the cheapest so far), and pedals are looked for among the lowest four notes of a chord. Up to four notes at a time all ways are followed.
    private const int MostWays = 80;
    private const int MostStates = 128;
    private const int NotesForFeet = 4;

    private readonly PassageEffort _effort;
    private readonly Tower _tower;

    private PassageLimbs(Tower tower) => (_tower, _effort) = (tower, new PassageEffort(tower));

    /// <summary>The limbs of each chord.</summary>
    /// <param name="tower">The tower, which has the bells.</param>
    /// <param name="chords">For each place of the passage, in order, what is struck for it, upward; none is empty.</param>
    public static Items<Items<Limb>> Of(Tower tower, IReadOnlyList<Items<LineNote>> chords) => new PassageLimbs(tower).Solve(chords);

    /// <summary>The effort of given limbs: what <see cref="Of"/> makes least.</summary>
    internal static double EffortOf(Tower tower, IReadOnlyList<Items<LineNote>> chords, IReadOnlyList<Items<Limb>> limbs) =>
        new PassageEffort(tower).Of(chords, limbs);

    private Items<Items<Limb>> Solve(IReadOnlyList<Items<LineNote>> chords)
    {
        Step[] steps = [new Step(0, default, null, null)];
        foreach (var chord in chords)
        {
            steps = Next(steps, [.. Ways(chord)], new Seconds(chord.Min(n => n.At.Value)));
        }

        var limbs = new Stack<Items<Limb>>();
        for (var step = steps[0]; step is { Limbs: { } taken }; step = step.Before)
        {
            limbs.Push(taken);
        }

        return limbs.ToItems();
    }

    // The cheapest step to each state, cheapest first; of equals the one found first.
    private Step[] Next(Step[] steps, Way[] ways, Seconds at)
    {
        var best = new Dictionary<Grips, Step>();
        foreach (var before in steps)
        {
            var grips = _effort.At(before.Grips, at);
            foreach (var way in ways)
            {
                var (effort, after) = (before.Effort + way.Effort + _effort.OfMeeting(grips, way.Strokes), grips);
                foreach (var (limb, strokes) in way.Strokes)
                {
                    var (moves, grip) = _effort.OfMoves(limb, grips[limb], strokes);
                    (effort, after) = (effort + moves, after.With(limb, grip));
                }

                if (!best.TryGetValue(after, out var known) || effort < known.Effort)
                {
                    best[after] = new Step(effort, after, way.Limbs, before);
                }
            }
        }

        return [.. best.Values.OrderBy(s => s.Effort).Take(MostStates)];
    }

    private IEnumerable<Way> Ways(Items<LineNote> chord) => Feet(chord)
        .SelectMany(feet => Hands(feet))
        .Select(limbs => WayOf(chord, limbs))
        .OrderBy(way => way.Effort)
        .Take(MostWays);

    private Way WayOf(Items<LineNote> chord, Items<Limb> limbs)
    {
        var strokes = limbs.Distinct().Order()
            .Select(limb => new LimbStrokes(limb, [.. chord.Where((_, i) => limbs[i] == limb).OrderBy(n => n.At)]));
        return new Way(_effort.OfChord(chord, limbs), limbs, [.. strokes]);
    }

    // What the feet can take: nothing, one pedal with either foot, two with both; null is left to the hands.
    private IEnumerable<Limb?[]> Feet(Items<LineNote> chord)
    {
        var pedals = Enumerable.Range(0, Math.Min(NotesForFeet, chord.Count)).Where(i => _tower.HasPedal(chord[i].Note)).ToArray();
        yield return new Limb?[chord.Count];
        foreach (var low in pedals)
        {
            yield return Taking((low, Limb.LeftFoot));
            yield return Taking((low, Limb.RightFoot));
            foreach (var high in pedals.Where(p => p > low))
            {
                yield return Taking((low, Limb.LeftFoot), (high, Limb.RightFoot));
            }
        }

        Limb?[] Taking(params (int Note, Limb Foot)[] taken)
        {
            var feet = new Limb?[chord.Count];
            foreach (var (note, foot) in taken)
            {
                feet[note] = foot;
            }

            return feet;
        }
    }

    // The rest parted between the hands: lower notes to the left, higher to the right, or the hands crossed.
    private static IEnumerable<Items<Limb>> Hands(Limb?[] feet)
    {
        var rest = feet.Count(f => f is null);
        for (var lower = 0; lower <= rest; lower++)
        {
            yield return Parted(lower, Limb.LeftHand, Limb.RightHand);
            if (lower > 0 && lower < rest)
            {
                yield return Parted(lower, Limb.RightHand, Limb.LeftHand);
            }
        }

        Items<Limb> Parted(int lower, Limb low, Limb high)
        {
            var taken = 0;
            return feet.Select(f => f ?? (taken++ < lower ? low : high)).ToItems();
        }
    }

    private sealed record Way(double Effort, Items<Limb> Limbs, LimbStrokes[] Strokes);

    private sealed record Step(double Effort, Grips Grips, Items<Limb>? Limbs, Step? Before);
}
