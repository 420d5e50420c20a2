using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>What a limb took last: one key, or the batons of a hand that were struck within the time that counts as at once.</summary>
/// <param name="First">The key that was struck first.</param>
/// <param name="From">When that was.</param>
/// <param name="Low">The lowest key.</param>
/// <param name="High">The highest key.</param>
/// <param name="Last">When the last of them was struck.</param>
/// <param name="Keys">How many there are.</param>
internal readonly record struct Grip(WrittenNote First, Seconds From, WrittenNote Low, WrittenNote High, Seconds Last, int Keys)
{
    /// <summary>The grip of one key.</summary>
    public static Grip Of(LineNote note) => new(note.Note, note.At, note.Note, note.Note, note.At, 1);

    /// <summary>The grip with one key more.</summary>
    public Grip With(LineNote note) => this with
    {
        Low = note.Note < Low ? note.Note : Low,
        High = note.Note > High ? note.Note : High,
        Last = note.At,
        Keys = Keys + 1,
    };

    /// <summary>The keys of two grips that lie nearest to each other.</summary>
    public static (WrittenNote From, WrittenNote To) Nearest(Grip from, Grip to)
    {
        var best = (from.Low, to.Low);
        foreach (var pair in (ReadOnlySpan<(WrittenNote From, WrittenNote To)>)[(from.Low, to.High), (from.High, to.Low), (from.High, to.High)])
        {
            best = (pair.To - pair.From).Size.Semitones < (best.Item2 - best.Item1).Size.Semitones ? pair : best;
        }

        return best;
    }
}

/// <summary>What each limb took last; null where it has rested long enough to be anywhere.</summary>
internal readonly record struct Grips(Grip? LeftFoot, Grip? RightFoot, Grip? LeftHand, Grip? RightHand)
{
    /// <summary>That of one limb.</summary>
    public Grip? this[Limb limb] => limb switch
    {
        Limb.LeftFoot => LeftFoot,
        Limb.RightFoot => RightFoot,
        Limb.LeftHand => LeftHand,
        _ => RightHand,
    };

    /// <summary>The same with another grip of one limb.</summary>
    public Grips With(Limb limb, Grip? grip) => limb switch
    {
        Limb.LeftFoot => this with { LeftFoot = grip },
        Limb.RightFoot => this with { RightFoot = grip },
        Limb.LeftHand => this with { LeftHand = grip },
        _ => this with { RightHand = grip },
    };

    /// <summary>The same without what was struck before a time.</summary>
    public Grips Since(Seconds time) => new(Since(LeftFoot, time), Since(RightFoot, time), Since(LeftHand, time), Since(RightHand, time));

    private static Grip? Since(Grip? grip, Seconds time) => grip is { } known && known.Last >= time ? grip : null;
}
