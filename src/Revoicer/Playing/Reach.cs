using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>What hands and feet can take at once and in which time: the hard limits, as the choosing of bells asks for them.</summary>
public sealed class Reach(PlayingLimits limits, Transposition transposition)
{
    /// <summary>No limit, hard or soft, looks back further than this.</summary>
    public Seconds LongestEasyTime { get; } = LongestOf(limits);

    /// <summary>Strokes this close count as struck at once.</summary>
    public Seconds AtOnce => limits.AtOnce;

    /// <summary>Whether one hand can take both batons at once.</summary>
    public bool HandTakes(WrittenNote low, WrittenNote high) =>
        limits.HandKeysAtOnce >= 2 && (high - low).Semitones <= limits.HandSpan.Semitones && low.Midi >= limits.HandPairLowest;

    /// <summary>Whether one hand can take some batons at once, given upward.</summary>
    public bool HandTakes(ReadOnlySpan<WrittenNote> upward) =>
        upward.Length < 2 || (HandHolds(upward.Length) && HandTakes(upward[0], upward[^1]));

    /// <summary>Whether two batons lie within the span of a hand.</summary>
    internal bool HandSpans(WrittenNote a, WrittenNote b) => (b - a).Size.Semitones <= limits.HandSpan.Semitones;

    /// <summary>Whether both feet reach two pedals at once.</summary>
    public bool FeetTake(WrittenNote low, WrittenNote high) => (high - low).Semitones <= limits.FeetApart.Semitones;

    /// <summary>Whether the hands reach two batons at once, the left the lower.</summary>
    public bool HandsTake(WrittenNote left, WrittenNote right) => (right - left).Semitones <= limits.HandsApart.Semitones;

    /// <summary>Whether the left hand may lie so far over the right.</summary>
    public bool HandsCross(WrittenNote left, WrittenNote right) => (left - right).Semitones <= limits.HandsCrossed.Semitones;

    /// <summary>Whether one hand holds so many batons at once.</summary>
    public bool HandHolds(int batons) => batons <= limits.HandKeysAtOnce;

    /// <summary>Whether so many bells may be struck at once.</summary>
    public bool BellsAtOnce(int bells) => bells <= limits.BellsAtOnce;

    /// <summary>
    /// Whether a stroke may follow another after a time not negative: the bell has recovered, the limb has had time to
    /// move. Two batons of one grip need no time between them.
    /// </summary>
    public bool MayFollow(WrittenNote from, Limb fromLimb, WrittenNote to, Limb toLimb, Seconds after)
    {
        var time = after.Value + Rounding;
        if (from == to)
        {
            // A bell's recovery is longer than any move onto the key that was just played.
            return time >= limits.Recovery(to, transposition).Value
                && (fromLimb != toLimb || time >= MoveTime(fromLimb, from, to).Value);
        }

        if (fromLimb != toLimb)
        {
            return true;
        }

        return after.Value < limits.AtOnce.Value - Rounding ? IsOneGrip(from, to, fromLimb) : time >= MoveTime(fromLimb, from, to).Value;
    }

    /// <summary>The least time between two strokes on one bell.</summary>
    public Seconds RecoveryOf(WrittenNote note) => limits.Recovery(note, transposition);

    /// <summary>The least time in which a limb gets from one key to another.</summary>
    public Seconds MoveTime(Limb limb, WrittenNote from, WrittenNote to) =>
        (IsHand(limb) ? limits.HandMove : limits.FootMove).Time(from, to);

    /// <summary>The time in which a limb gets there with ease.</summary>
    public Seconds EasyMoveTime(Limb limb, WrittenNote from, WrittenNote to) =>
        (IsHand(limb) ? limits.EasyHandMove : limits.EasyFootMove).Time(from, to);

    // Times come from exact beats through floating point; a microsecond is no breach.
    private const double Rounding = 1e-6;

    private bool IsOneGrip(WrittenNote a, WrittenNote b, Limb limb) =>
        IsHand(limb) && (a < b ? HandTakes(a, b) : HandTakes(b, a));

    private static bool IsHand(Limb limb) => limb is Limb.LeftHand or Limb.RightHand;

    private static Seconds LongestOf(PlayingLimits limits)
    {
        // A tower may set a hard limit beyond the soft one.
        var recovery = PlayingLimits.Keys
            .Where(k => k.StartsWith("recovery_", StringComparison.Ordinal))
            .Max(k => Math.Max(limits.Hard(k), limits.Soft(k)));
        MoveLaw[] laws = [limits.HandMove, limits.FootMove, limits.EasyHandMove, limits.EasyFootMove];
        return new Seconds(Math.Max(recovery, laws.Max(law => law.Longest.Value)));
    }
}
