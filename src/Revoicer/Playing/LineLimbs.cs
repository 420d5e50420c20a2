using Revoicer.Bells;
using Revoicer.Music;

namespace Revoicer.Playing;

/// <summary>The limbs among which a line of single notes is shared, and what each note costs each of them by itself.</summary>
public sealed class LineLimbs
{
    // Estimates, in the unit of effort: a note for the left hand, which is wanted elsewhere; each natural key by which a
    // foot goes beyond the middle of the pedals into the half of the other.
    private const double LeftHand = 3;
    private const double BeyondTheMiddle = 0.2;

    private readonly Func<Limb, WrittenNote, double> _price;

    private LineLimbs(Func<Limb, WrittenNote, double> price, params Limb[] limbs)
    {
        _price = price;
        All = limbs;
    }

    /// <summary>Both hands; the left is wanted elsewhere.</summary>
    public static LineLimbs Hands { get; } =
        new((limb, _) => limb == Limb.LeftHand ? LeftHand : 0, Limb.LeftHand, Limb.RightHand);

    /// <summary>The limbs, from the left.</summary>
    internal IReadOnlyList<Limb> All { get; }

    /// <summary>Both feet, each at home in its half of the pedals.</summary>
    public static LineLimbs Feet(Tower tower)
    {
        var middle = WrittenNote.AtMidi((tower.PedalsFrom.Midi + tower.PedalsTo.Midi) / 2);
        return new((foot, note) => FootPrice(tower, middle, foot, note), Limb.LeftFoot, Limb.RightFoot);
    }

    /// <summary>
    /// Both feet and the left hand, which takes what lies in the lower half of the batons where the feet have no pedal or
    /// no time.
    /// </summary>
    public static LineLimbs FeetAndLeftHand(Tower tower)
    {
        var feet = Feet(tower);
        var effort = new Effort(PlayingLimits.For(tower));
        var middle = WrittenNote.AtMidi((tower.Bells[0].Note.Midi + tower.Bells[^1].Note.Midi) / 2);
        return new(
            (limb, note) => limb != Limb.LeftHand ? feet.PriceOf(limb, note)
                : note > middle ? double.PositiveInfinity
                : LeftHand + effort.OfGrip([], [note], []),
            Limb.LeftFoot,
            Limb.RightFoot,
            Limb.LeftHand);
    }

    /// <summary>Whether one of the limbs can take a note.</summary>
    public bool Take(WrittenNote note) => All.Any(limb => double.IsFinite(_price(limb, note)));

    /// <summary>What a note costs a limb, in the unit of effort; infinite where it cannot take it.</summary>
    internal double PriceOf(Limb limb, WrittenNote note) => _price(limb, note);

    private static double FootPrice(Tower tower, WrittenNote middle, Limb foot, WrittenNote note)
    {
        if (!tower.HasPedal(note))
        {
            return double.PositiveInfinity;
        }

        var isBeyond = foot == Limb.LeftFoot ? note > middle : note < middle;
        return isBeyond ? BeyondTheMiddle * MoveLaw.NaturalKeys(middle, note) : 0;
    }
}
