namespace Revoicer.Solving;

/// <summary>
/// A pair of slots that are not neighbours: what their candidates cost together, and what has been lent to the pair from
/// their own prices. Whatever is lent, the price of a choice stays the same: it only stands in another place.
/// </summary>
internal sealed class LentPair
{
    private readonly PairTable _together;
    private readonly int[] _fromFirst;
    private readonly int[] _fromSecond;

    private LentPair(int first, int second, PairTable together, int[] fromFirst, int[] fromSecond)
    {
        (First, Second) = (first, second);
        (_together, _fromFirst, _fromSecond) = (together, fromFirst, fromSecond);
    }

    /// <summary>A pair to which nothing has been lent.</summary>
    public LentPair(int first, int[] firstCandidates, int second, int[] secondCandidates, PairTable together)
        : this(first, second, together, new int[firstCandidates.Length], new int[secondCandidates.Length])
    {
    }

    /// <summary>The slot that comes first.</summary>
    public int First { get; }

    /// <summary>The other slot.</summary>
    public int Second { get; }

    /// <summary>Gives back to a slot all that the pair has whatever the other slot does, so that its least is then 0.</summary>
    public void GiveBack(int slot, int[] own)
    {
        var (least, lent) = slot == First
            ? (_together.LeastOfColumns(_fromSecond), _fromFirst)
            : (_together.LeastOfRows(_fromFirst), _fromSecond);
        for (var place = 0; place < own.Length; place++)
        {
            // The least of a candidate that has no partner left is beyond all wanting, and stays so.
            own[place] = Math.Min(PairTable.Never, own[place] + least[place] + lent[place]);
            lent[place] = -least[place];
        }
    }

    /// <summary>Lends something to the pair from one candidate of a slot; the caller takes it off that candidate.</summary>
    public void Lend(int slot, int place, int amount) => (slot == First ? _fromFirst : _fromSecond)[place] += amount;

    /// <summary>A pair of its own with the same loans, of some candidates.</summary>
    public LentPair Keeping(int[] ofFirst, int[] ofSecond) => new(
        First,
        Second,
        _together.Keeping(ofFirst, ofSecond),
        Array.ConvertAll(ofFirst, place => _fromFirst[place]),
        Array.ConvertAll(ofSecond, place => _fromSecond[place]));
}
