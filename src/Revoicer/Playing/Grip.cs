using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>Keys that a limb leaves.</summary>
/// <param name="Low">The lowest.</param>
/// <param name="High">The highest.</param>
/// <param name="Last">When the last of them was struck.</param>
internal readonly record struct Held(WrittenNote Low, WrittenNote High, Seconds Last);

/// <summary>What a limb took last: one key, or the batons of a hand that were struck within the time that counts as at once.</summary>
/// <param name="First">The key that was struck first.</param>
/// <param name="From">When that was.</param>
/// <param name="Keys">The keys and when the last of them was struck.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Before">What the limb came from, as long as a key may still join; null where it had rested.</param>
internal readonly record struct Grip(WrittenNote First, Seconds From, Held Keys, int Count, Held? Before)
{
    /// <summary>The grip of one key.</summary>
    public static Grip Of(LineNote note, Held? before) => new(note.Note, note.At, new Held(note.Note, note.Note, note.At), 1, before);

    /// <summary>The grip with one key more.</summary>
    public Grip With(LineNote note) => this with
    {
        Keys = new Held(note.Note < Keys.Low ? note.Note : Keys.Low, note.Note > Keys.High ? note.Note : Keys.High, note.At),
        Count = Count + 1,
    };

    /// <summary>Of what tells grips apart most; equality asks for all of it.</summary>
    public override int GetHashCode() => HashCode.Combine(Keys.Low.Midi, Keys.High.Midi, Keys.Last.Value);

    /// <summary>The keys of two grips that lie nearest to each other.</summary>
    public static (WrittenNote From, WrittenNote To) Nearest(Held from, Held to)
    {
        var best = (From: from.Low, To: to.Low);
        foreach (var pair in (ReadOnlySpan<(WrittenNote From, WrittenNote To)>)[(from.Low, to.High), (from.High, to.Low), (from.High, to.High)])
        {
            best = (pair.To - pair.From).Size.Semitones < (best.To - best.From).Size.Semitones ? pair : best;
        }

        return best;
    }
}

/// <summary>What each limb took last; null where it has rested long enough to be anywhere.</summary>
internal readonly record struct Grips(Grip? LeftFoot, Grip? RightFoot, Grip? LeftHand, Grip? RightHand)
{
    private static readonly Seconds LongAgo = new(double.NegativeInfinity);

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

    /// <summary>What of it still matters at a time.</summary>
    /// <param name="rested">A limb that struck last before this has rested.</param>
    /// <param name="closed">No key joins a grip that began before this.</param>
    public Grips Since(Seconds rested, Seconds closed)
    {
        return new(Since(LeftFoot), Since(RightFoot), Since(LeftHand), Since(RightHand));

        Grip? Since(Grip? grip) => grip is not { } known || known.Keys.Last < rested ? null
            : known.From < closed ? new Grip(known.Keys.Low, LongAgo, known.Keys, known.Count, null)
            : known;
    }
}

/// <summary>What one limb strikes for a chord.</summary>
/// <param name="Limb">The limb.</param>
/// <param name="Notes">Its strokes in order of time.</param>
internal sealed record LimbStrokes(Limb Limb, LineNote[] Notes)
{
    /// <summary>Its place among all that limbs could strike for the chord, counted from 0.</summary>
    public int Number { get; init; }
}
