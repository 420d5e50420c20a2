namespace Revoicer.LeadSheets.Harmony;

/// <summary>At one moment the cheapest row of chords up to it, for each chord with which it can end.</summary>
internal sealed class Frontier
{
    /// <summary>A price beyond all.</summary>
    public const long Never = long.MaxValue / 4;

    private readonly long[] _cost = new long[ChordGuess.Count];
    private readonly ChordFrom?[] _row = new ChordFrom?[ChordGuess.Count];
    private readonly long[] _ofKind = new long[ChordTemplate.All.Count * ChordGuess.Tones];
    private readonly ChordFrom?[] _rowOfKind = new ChordFrom?[ChordTemplate.All.Count * ChordGuess.Tones];
    private readonly long[] _ofRoot = new long[ChordGuess.Tones];
    private readonly ChordFrom?[] _rowOfRoot = new ChordFrom?[ChordGuess.Tones];

    public Frontier() => Clear();

    /// <summary>What the cheapest row costs.</summary>
    public long Cheapest { get; private set; }

    /// <summary>The cheapest row.</summary>
    public ChordFrom? CheapestRow { get; private set; }

    public void Clear()
    {
        Array.Fill(_cost, Never);
        Array.Fill(_ofKind, Never);
        Array.Fill(_ofRoot, Never);
        Array.Clear(_row);
        Array.Clear(_rowOfRoot);
        Array.Clear(_rowOfKind);
        (Cheapest, CheapestRow) = (Never, null);
    }

    /// <summary>The cheapest row that ends with a chord; null, at a price beyond all, where none does.</summary>
    public (long Cost, ChordFrom? Row) EndingWith(ChordGuess chord) => (_cost[chord.Number], _row[chord.Number]);

    /// <summary>The cheapest row that ends with a chord over any bass.</summary>
    public (long Cost, ChordFrom? Row) OverAnyBass(ChordGuess chord) => (_ofKind[KindOf(chord)], _rowOfKind[KindOf(chord)]);

    /// <summary>The cheapest row that ends with any chord on a root.</summary>
    public (long Cost, ChordFrom? Row) OnRoot(int root) => (_ofRoot[root], _rowOfRoot[root]);

    /// <summary>A row that goes on with its last chord. Of equal ones the first offered stays.</summary>
    public void Hold(long cost, ChordFrom row)
    {
        if (cost < _cost[row.Chord.Number])
        {
            Put(cost, row);
        }
    }

    /// <summary>A row that goes on with another chord from a moment on. Of equal ones the first offered stays.</summary>
    public void Change(long cost, ChordGuess chord, int from, ChordFrom? before)
    {
        if (cost < _cost[chord.Number])
        {
            Put(cost, new ChordFrom(from, chord, before));
        }
    }

    /// <summary>The rows as they are, for a moment at which nothing sounds.</summary>
    public void HoldAll(Frontier before)
    {
        foreach (var row in before._row)
        {
            if (row is not null)
            {
                Hold(before._cost[row.Chord.Number], row);
            }
        }
    }

    private static int KindOf(ChordGuess chord) => (chord.Kind * ChordGuess.Tones) + chord.Root;

    private void Put(long cost, ChordFrom row)
    {
        var chord = row.Chord;
        (_cost[chord.Number], _row[chord.Number]) = (cost, row);
        if (chord.Kind >= 0 && cost < _ofKind[KindOf(chord)])
        {
            (_ofKind[KindOf(chord)], _rowOfKind[KindOf(chord)]) = (cost, row);
        }

        if (chord.Kind >= 0 && cost < _ofRoot[chord.Root])
        {
            (_ofRoot[chord.Root], _rowOfRoot[chord.Root]) = (cost, row);
        }

        if (cost < Cheapest)
        {
            (Cheapest, CheapestRow) = (cost, row);
        }
    }
}
