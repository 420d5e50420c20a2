using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>One place where strokes cannot be played.</summary>
/// <param name="At">When, in seconds from the start.</param>
/// <param name="Limit">The key of the limit that is broken, or "bell" where the tower lacks one.</param>
/// <param name="Sentence">What cannot be done there.</param>
public sealed record Breach(Seconds At, string Limit, string Sentence)
{
    /// <summary>Whether only strokes of the tune are concerned, which is given and not chosen.</summary>
    public bool InTune { get; init; }
}

/// <summary>
/// Judges strokes against the hard playing limits. It knows nothing of candidates, prices or searches, and states every
/// rule by itself, so that a mistake in those cannot pass unseen.
/// </summary>
public sealed class Checker(Tower tower)
{
    private readonly PlayingLimits _limits = PlayingLimits.For(tower);

    /// <summary>All breaches, in order of time; none where everything is playable.</summary>
    public Items<Breach> Check(IEnumerable<Stroke> strokes)
    {
        var ordered = strokes.OrderBy(s => s.At.Value).ThenBy(s => s.Note.Midi).ToArray();
        return ordered.SelectMany(MissingBell)
            .Concat(AtOnce(ordered))
            .Concat(Recovery(ordered))
            .Concat(Enum.GetValues<Limb>().SelectMany(limb => Moves(limb, [.. ordered.Where(s => s.Limb == limb)])))
            .OrderBy(b => b.At.Value)
            .ThenBy(b => b.Limit, StringComparer.Ordinal)
            .ToItems();
    }

    private IEnumerable<Breach> MissingBell(Stroke stroke)
    {
        if (tower.At(stroke.Note) is null)
        {
            yield return new Breach(stroke.At, "bell", $"{tower.Name} has no bell on {stroke.Note}");
        }
        else if (stroke.IsPedal && !tower.HasPedal(stroke.Note))
        {
            yield return new Breach(stroke.At, "bell", $"{tower.Name} has no pedal for {stroke.Note}");
        }
    }

    // Every stroke opens a window of at_once_s; what falls into it is struck at once.
    private IEnumerable<Breach> AtOnce(Stroke[] ordered)
    {
        for (var first = 0; first < ordered.Length; first++)
        {
            var together = ordered.Skip(first).TakeWhile(s => IsAtOnce(ordered[first], s)).ToArray();
            if (together.Length > _limits.Hard("bells_at_once"))
            {
                yield return At(ordered[first], "bells_at_once", $"{together.Length} bells are to be struck at once");
            }

            foreach (var other in together.Skip(1))
            {
                foreach (var breach in Pair(ordered[first], other, together))
                {
                    yield return breach with { InTune = ordered[first].IsTune && other.IsTune };
                }
            }
        }
    }

    private IEnumerable<Breach> Pair(Stroke a, Stroke b, Stroke[] together)
    {
        var (low, high) = a.Note <= b.Note ? (a, b) : (b, a);
        var span = (high.Note - low.Note).Semitones;
        if (a.Limb == b.Limb)
        {
            return SameLimb(a, low, high, span, together.Count(s => s.Limb == a.Limb));
        }

        return (low.Limb, high.Limb) switch
        {
            (Limb.LeftFoot, Limb.RightFoot) or (Limb.RightFoot, Limb.LeftFoot) => Feet(a, low, high, span),
            (Limb.LeftHand, Limb.RightHand) or (Limb.RightHand, Limb.LeftHand) => Hands(a, low, high, span),
            _ => [],
        };
    }

    private IEnumerable<Breach> SameLimb(Stroke at, Stroke low, Stroke high, int span, int count)
    {
        if (at.IsPedal)
        {
            yield return At(at, "foot_keys_at_once", $"one foot is to take {low.Note} and {high.Note} at once");
            yield break;
        }

        if (count > _limits.Hard("hand_keys_at_once"))
        {
            yield return At(at, "hand_keys_at_once", $"one hand is to take {count} batons at once");
        }

        if (span > _limits.Hard("hand_span"))
        {
            yield return At(at, "hand_span", $"one hand is to span {low.Note} to {high.Note}");
        }

        if (low.Note.Midi < _limits.Hard("hand_pair_lowest_n"))
        {
            yield return At(at, "hand_pair_lowest_n", $"one hand is to take {low.Note} and {high.Note}, too heavy a pair");
        }
    }

    private IEnumerable<Breach> Feet(Stroke at, Stroke low, Stroke high, int span)
    {
        if (span > _limits.Hard("feet_apart"))
        {
            yield return At(at, "feet_apart", $"the feet are to reach {low.Note} and {high.Note}");
        }

        if (low.Limb == Limb.RightFoot && span > 0)
        {
            yield return At(at, "feet_crossed", $"the feet cross at {low.Note} and {high.Note}");
        }
    }

    private IEnumerable<Breach> Hands(Stroke at, Stroke low, Stroke high, int span)
    {
        if (span > _limits.Hard("hands_apart"))
        {
            yield return At(at, "hands_apart", $"the hands are to reach {low.Note} and {high.Note}");
        }

        if (low.Limb == Limb.RightHand && span > _limits.Hard("hands_crossed"))
        {
            yield return At(at, "hands_crossed", $"the left hand lies over the right at {low.Note} and {high.Note}");
        }
    }

    private IEnumerable<Breach> Recovery(Stroke[] ordered)
    {
        foreach (var bell in ordered.GroupBy(s => s.Note))
        {
            var key = PlayingLimits.RecoveryKey(bell.Key, tower.Transposition);
            foreach (var (earlier, later) in bell.Zip(bell.Skip(1)))
            {
                if ((later.At - earlier.At).Value < _limits.Hard(key) - Rounding)
                {
                    yield return At(later, key, $"{bell.Key} is struck again after {later.At - earlier.At}") with { InTune = earlier.IsTune && later.IsTune };
                }
            }
        }
    }

    private IEnumerable<Breach> Moves(Limb limb, Stroke[] strokes)
    {
        var foot = limb is Limb.LeftFoot or Limb.RightFoot;
        var name = foot ? "foot_move" : "hand_move";
        Stroke[] before = [];
        foreach (var grip in Grips(strokes))
        {
            if (before.Length > 0)
            {
                var (from, to) = before.SelectMany(_ => grip, (f, t) => (f, t)).MinBy(m => Math.Abs((m.t.Note - m.f.Note).Semitones));
                var needed = _limits.Hard(name + "_base_s")
                    + (_limits.Hard(name + "_per_doubling_s") * Math.Log2(1 + MoveLaw.NaturalKeys(from.Note, to.Note)))
                    + (from.Note.IsSharp == to.Note.IsSharp ? 0 : _limits.Hard("row_change_s"))
                    + (to.Note.Midi < 60 ? _limits.Hard("heavy_key_below_n60_s") : 0);
                var has = grip[0].At - before[^1].At;
                if (has.Value < needed - Rounding)
                {
                    yield return At(to, name + "_base_s", $"{LimbNames.Of(limb)} has {has} from {from.Note} to {to.Note} and needs {new Seconds(needed)}")
                        with
                    { InTune = from.IsTune && to.IsTune };
                }
            }

            before = grip;
        }
    }

    // Strokes of one limb within at_once_s and within a hand's span are one grip.
    private IEnumerable<Stroke[]> Grips(Stroke[] strokes)
    {
        for (var i = 0; i < strokes.Length;)
        {
            var first = strokes[i];
            var grip = strokes.Skip(i + 1)
                .TakeWhile(s => IsAtOnce(first, s) && (s.Note - first.Note).Size.Semitones <= _limits.Hard("hand_span"))
                .Prepend(first)
                .ToArray();
            yield return grip;
            i += grip.Length;
        }
    }

    // Two steps of a roll of 0.06 s are not at once, on whichever side of 0.12 s floating point puts them.
    private bool IsAtOnce(Stroke earlier, Stroke later) => (later.At - earlier.At).Value < _limits.AtOnce.Value - Rounding;

    // Times come from exact beats through floating point; a microsecond is no breach.
    private const double Rounding = 1e-6;

    private static Breach At(Stroke stroke, string limit, string sentence) => new(stroke.At, limit, sentence);
}
