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
    // In passages of more than 1,000 chords both grow fewer, so that what is followed from chord to chord grows no more: there
    // limbs are only told, and a place that is not the best among thousands says little.
    private const int MostWays = 80;
    private const int MostStates = 128;
    private const int FewestWays = 8;
    private const int FewestStates = 4;
    private const int LongPassage = 1_000;
    private const int NotesForFeet = 4;

    private static readonly Limb[] AllLimbs = [.. Enum.GetValues<Limb>().Order()];

    // Chords whose ways are listed at a time, and how many are too few to share among the cores.
    private const int AtATime = 256;
    private const int Few = 16;

    private readonly PassageEffort _effort;
    private readonly Tower _tower;

    private readonly int _mostWays;
    private readonly int _mostStates;

    private PassageLimbs(Tower tower, int chords)
    {
        (_tower, _effort) = (tower, new PassageEffort(tower));
        _mostWays = Math.Max(FewestWays, (int)Math.Min(MostWays, (long)MostWays * LongPassage / Math.Max(1, chords)));
        _mostStates = Math.Max(FewestStates, (int)Math.Min(MostStates, (long)MostStates * LongPassage / Math.Max(1, chords)));
    }

    /// <summary>The limbs of each chord.</summary>
    /// <param name="tower">The tower, which has the bells.</param>
    /// <param name="chords">For each place of the passage, in order, what is struck for it, upward; none is empty.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="asLong">As few ways are followed as in a passage of so many chords.</param>
    public static Items<Items<Limb>> Of(Tower tower, IReadOnlyList<Items<LineNote>> chords, CancellationToken cancel = default, int asLong = 0) =>
        new PassageLimbs(tower, Math.Max(asLong, chords.Count)).Solve(chords, cancel);

    /// <summary>The effort of given limbs: what <see cref="Of"/> makes least.</summary>
    internal static double EffortOf(Tower tower, IReadOnlyList<Items<LineNote>> chords, IReadOnlyList<Items<Limb>> limbs) =>
        new PassageEffort(tower).Of(chords, limbs);

    private Items<Items<Limb>> Solve(IReadOnlyList<Items<LineNote>> chords, CancellationToken cancel)
    {
        Step[] steps = [new Step(0, default, null, null)];
        foreach (var some in chords.Chunk(AtATime))
        {
            cancel.ThrowIfCancellationRequested();
            var ways = some.Length <= Few ? [.. some.Select(WaysOf)] : some.AsParallel().AsOrdered().WithCancellation(cancel).Select(WaysOf).ToArray();
            foreach (var (chord, its) in some.Zip(ways))
            {
                steps = Next(steps, its, new Seconds(chord.Min(n => n.At.Value)));
            }
        }

        var limbs = new Stack<Items<Limb>>();
        for (var step = steps[0]; step is { Limbs: { } taken }; step = step.Before)
        {
            limbs.Push(taken);
        }

        return limbs.ToItems();
    }

    // The cheapest step to each state, cheapest first; of equals the one found first. Steps and ways come cheapest first, and
    // moves only add to them: what costs more than as many states as are kept is not looked at.
    private Step[] Next(Step[] steps, Ways ways, Seconds at)
    {
        var best = new Dictionary<Grips, Step>();
        var kept = new PriorityQueue<double, double>();
        var limit = double.PositiveInfinity;
        var moves = new (bool IsKnown, double Effort, Grip? Grip)[ways.Parts];
        foreach (var before in steps)
        {
            var grips = _effort.At(before.Grips, at);
            Array.Clear(moves);
            foreach (var way in ways.All)
            {
                if (before.Effort + way.Effort > limit)
                {
                    break;
                }

                var (effort, after) = (before.Effort + way.Effort + _effort.OfMeeting(grips, way.Strokes), grips);
                foreach (var strokes in way.Strokes)
                {
                    ref var move = ref moves[strokes.Number];
                    if (!move.IsKnown)
                    {
                        var (moved, grip) = _effort.OfMoves(strokes.Limb, grips[strokes.Limb], strokes.Notes);
                        move = (true, moved, grip);
                    }

                    (effort, after) = (effort + move.Effort, after.With(strokes.Limb, move.Grip));
                }

                if (!best.TryGetValue(after, out var known))
                {
                    kept.Enqueue(effort, -effort);
                    if (kept.Count > _mostStates)
                    {
                        kept.Dequeue();
                        limit = kept.Peek();
                    }
                }

                if (known is null || effort < known.Effort)
                {
                    best[after] = new Step(effort, after, way.Limbs, before);
                }
            }
        }

        return [.. best.Values.OrderBy(s => s.Effort).Take(_mostStates)];
    }

    private Ways WaysOf(Items<LineNote> chord)
    {
        var known = new Dictionary<(Limb Limb, UInt128 Notes), LimbStrokes>();
        Way[] ways =
        [
            .. Feet(chord)
                .SelectMany(feet => Hands(feet))
                .Select(limbs => (Effort: _effort.OfChord(chord.AsSpan(), limbs), Limbs: limbs))
                .OrderBy(way => way.Effort)
                .Take(_mostWays)
                .Select(way => new Way(way.Effort, way.Limbs.ToItems(), [.. AllLimbs.Where(way.Limbs.Contains).Select(limb => Strokes(way.Limbs, limb))])),
        ];
        return new Ways(ways, known.Count);

        // The same strokes of a limb are the same in every way, so that what it costs to come to them is asked once.
        LimbStrokes Strokes(Limb[] limbs, Limb limb)
        {
            var notes = UInt128.Zero;
            for (var i = 0; i < limbs.Length; i++)
            {
                notes |= limbs[i] == limb ? UInt128.One << i : 0;
            }

            return known.TryGetValue((limb, notes), out var strokes)
                ? strokes
                : known[(limb, notes)] = new LimbStrokes(limb, [.. chord.Where((_, i) => limbs[i] == limb).OrderBy(n => n.At)]) { Number = known.Count };
        }
    }

    // What the feet can take: nothing, one pedal with either foot, two with both; null is left to the hands.
    private IEnumerable<Limb?[]> Feet(Items<LineNote> chord)
    {
        var pedals = Enumerable.Range(0, chord.Count).Where(i => (i < NotesForFeet || chord[i].IsForFeet) && _tower.HasPedal(chord[i].Note)).ToArray();
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
    private static IEnumerable<Limb[]> Hands(Limb?[] feet)
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

        Limb[] Parted(int lower, Limb low, Limb high)
        {
            var (taken, limbs) = (0, new Limb[feet.Length]);
            for (var i = 0; i < limbs.Length; i++)
            {
                limbs[i] = feet[i] ?? (taken++ < lower ? low : high);
            }

            return limbs;
        }
    }

    private sealed record Ways(Way[] All, int Parts);

    private sealed record Way(double Effort, Items<Limb> Limbs, LimbStrokes[] Strokes);

    private sealed record Step(double Effort, Grips Grips, Items<Limb>? Limbs, Step? Before);
}
