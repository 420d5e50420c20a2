namespace Revoicer.Arrangements;

/// <summary>What a draft would have cost with the tune in another octave, against the one in which it lies.</summary>
/// <param name="Octaves">By how many octaves higher than written that is.</param>
/// <param name="CostsMore">
/// By how much the price of everything, what the tune costs with itself included, would be higher, in thousandths of a clash unit;
/// negative where it would be lower; null where no voicing keeps every rule there.
/// </param>
/// <param name="IsExact">Whether it was searched to the end; else it costs so much more at the least, or so much less at the most.</param>
public sealed record OtherOctave(int Octaves, long? CostsMore, bool IsExact)
{
    /// <summary>So many are told of at most, the nearest.</summary>
    public const int MostTold = 3;
}
