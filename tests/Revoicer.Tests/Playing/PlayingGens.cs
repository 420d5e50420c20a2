using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Tests.Playing;

/// <summary>A stroke and the next of the same limb, on a tower that may have limits of its own.</summary>
public sealed record NextStroke(Tower Tower, Stroke First, Stroke Second);

/// <summary>Three keys.</summary>
public sealed record ThreeKeys(WrittenNote A, WrittenNote B, WrittenNote C);

/// <summary>Generators for playing.</summary>
internal static class PlayingGens
{
    public static Arbitrary<NextStroke> NextStrokes() => (
        from tower in Towers
        from limb in Gen.Elements(Enum.GetValues<Limb>())
        let keys = tower.Bells.Select(b => b.Note).Where(n => limb >= Limb.LeftHand || tower.HasPedal(n)).ToArray()
        from first in Gen.Choose(0, keys.Length - 1)
        from step in Gen.OneOf(Gen.Choose(-6, 6), Gen.Choose(-40, 40))
        from milliseconds in Gen.OneOf(Gen.Choose(0, 130), Gen.Choose(0, 800))
        from start in Gen.Choose(0, 10_000)
        let second = Math.Clamp(first + step, 0, keys.Length - 1)
        let at = new Seconds(start / 1000.0)
        select new NextStroke(
            tower,
            Strokes.Of(keys[first], limb, at),
            Strokes.Of(keys[second], limb, at + new Seconds(milliseconds / 1000.0)))).ToArbitrary();

    public static Arbitrary<ThreeKeys> Keys() => (
        from a in Key
        from b in Key
        from c in Key
        select new ThreeKeys(a, b, c)).ToArbitrary();

    public static Gen<WrittenNote> Key => Gen.Choose(24, 108).Select(WrittenNote.AtMidi);

    private static Gen<Tower> Towers =>
        from name in Gen.Elements(ShippedTowers.Names.ToArray())
        from own in Gen.OneOf(Gen.Constant(Items<LimitOverride>.None), OwnLimits)
        select ShippedTowers.Named(name) with { Limits = own };

    // No bell recovers in less than the time within which strokes count as one; so do the shipped limits have it.
    private static Gen<Items<LimitOverride>> OwnLimits =>
        from span in Between(0, 12)
        from lowest in Between(40, 200)
        from keys in Between(1, 3)
        from atOnce in Between(0, 0.15)
        from recovery in Between(0.15, 3)
        from move in Between(0, 0.3)
        select new[]
        {
            new LimitOverride("hand_span", span, null),
            new LimitOverride("hand_pair_lowest_n", lowest, null),
            new LimitOverride("hand_keys_at_once", keys, null),
            new LimitOverride("at_once_s", atOnce, null),
            new LimitOverride("recovery_60_71_s", recovery, null),
            new LimitOverride("hand_move_base_s", move, null),
            new LimitOverride("foot_move_base_s", move, null),
        }.ToItems();

    private static Gen<double> Between(double lowest, double highest) =>
        Gen.Choose(0, 1000).Select(n => lowest + ((highest - lowest) * n / 1000));
}
