using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>
/// How hard a chord is to take, in clash units: soft costs that begin at the soft limits of playing-limits.tsv. The sizes
/// are estimates.
/// </summary>
public sealed class Effort(PlayingLimits limits)
{
    private const double PerSemitoneOfStretch = 1;
    private const double PerSemitoneApart = 0.4;
    private const double HandOnLowKey = 2;
    private const double LowerStill = 4;
    private const double SharpAndNatural = 1;
    private const double BellTooMany = 5;
    private const double LowCloseInterval = 6;
    private const double LowPedalHighBaton = 3;
    private const double PerSecondOfHurry = 25;

    private readonly double _handSpan = limits.Soft("hand_span");
    private readonly double _handLowest = limits.Soft("hand_lowest_n");
    private readonly double _pairLowest = limits.Hard("hand_pair_lowest_n");
    private readonly double _handsApart = limits.Soft("hands_apart");
    private readonly double _feetApart = limits.Soft("feet_apart");
    private readonly double _spansTogether = limits.Soft("spans_together");
    private readonly double _bellsAtOnce = limits.Soft("bells_at_once");
    private readonly double _lowClose = limits.Soft("low_close_interval");

    /// <summary>The effort of taking some keys at once.</summary>
    /// <param name="pedals">The keys of the feet, upward.</param>
    /// <param name="left">The keys of the left hand, upward.</param>
    /// <param name="right">The keys of the right hand, upward.</param>
    public double OfGrip(ReadOnlySpan<WrittenNote> pedals, ReadOnlySpan<WrittenNote> left, ReadOnlySpan<WrittenNote> right)
    {
        var feet = Span(pedals);
        var apart = left.IsEmpty || right.IsEmpty ? 0 : (right[^1] - left[0]).Semitones;
        var bells = pedals.Length + left.Length + right.Length;
        return OfHand(left) + OfHand(right)
            + (PerSemitoneApart * Over(apart, _handsApart))
            + (PerSemitoneOfStretch * Over(feet, _feetApart))
            + (PerSemitoneApart * Over(feet + apart, _spansTogether))
            + (BellTooMany * Over(bells, _bellsAtOnce));
    }

    /// <summary>The effort of taking some keys one after another, the feet together.</summary>
    /// <param name="pedals">The keys of the feet, upward.</param>
    /// <param name="hands">The keys of the hands.</param>
    public double OneByOne(ReadOnlySpan<WrittenNote> pedals, ReadOnlySpan<WrittenNote> hands)
    {
        var effort = PerSemitoneOfStretch * Over(Span(pedals), _feetApart);
        for (var i = 0; i < hands.Length; i++)
        {
            effort += OfHand(hands.Slice(i, 1));
        }

        return effort;
    }

    /// <summary>The effort, and poor sound, of low bells close together, and of the deepest pedals under the highest batons.</summary>
    /// <param name="upward">All keys of a chord, upward.</param>
    public double OfRegister(ReadOnlySpan<WrittenNote> upward)
    {
        if (upward.Length < 2)
        {
            return 0;
        }

        var close = upward[0].Midi < 60 && (upward[1] - upward[0]).Semitones <= _lowClose;
        var wide = upward[0].Midi <= 52 && upward[^1].Midi >= 90;
        return (close ? LowCloseInterval : 0) + (wide ? LowPedalHighBaton : 0);
    }

    /// <summary>The effort of a move made in less than the easy time.</summary>
    public static double OfHurry(Seconds has, Seconds easy) => PerSecondOfHurry * Over(easy.Value, has.Value);

    private double OfHand(ReadOnlySpan<WrittenNote> keys)
    {
        var effort = PerSemitoneOfStretch * Over(Span(keys), _handSpan);
        foreach (var key in keys)
        {
            effort += key.Midi < _pairLowest ? LowerStill * HandOnLowKey : key.Midi < _handLowest ? HandOnLowKey : 0;
        }

        return effort + (keys.Length == 2 && keys[0].IsSharp != keys[1].IsSharp ? SharpAndNatural : 0);
    }

    private static double Span(ReadOnlySpan<WrittenNote> keys) => keys.Length < 2 ? 0 : (keys[^1] - keys[0]).Semitones;

    private static double Over(double value, double limit) => Math.Max(0, value - limit);
}
