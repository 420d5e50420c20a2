using Revoicer.Sounds;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// Prices the candidates of one slot with those of another: what rings from one into the other at every hearing, and,
/// where one follows the other, how the voices and the bass move. No price is negative.
/// </summary>
internal sealed class SlotLink
{
    private readonly PricedSlot _earlier;
    private readonly PricedSlot _later;
    private readonly StrokeTable _strokes;
    private readonly int _forward;
    private readonly int _backward;
    private readonly int _steady;
    private readonly UpperLine _upper;
    private readonly RingingOn? _ringing;
    private readonly BassMotion _ahead;
    private readonly BassMotion _back;

    // Bass line and steadiness by the basses with their figures.
    private readonly int[] _lines;

    private SlotLink(Instrument instrument, Sound sound, PricedSlot earlier, PricedSlot later, long[] apart)
    {
        _earlier = earlier;
        _later = later;
        Apart = apart;
        _forward = Follows(earlier.Slot, later.Slot);
        _backward = Follows(later.Slot, earlier.Slot);
        _strokes = StrokeTable.Between(instrument, earlier.Kinds, later.Kinds, apart, isOftenRead: AreNeighbours);
        _steady = earlier.Slot.Phrase == later.Slot.Phrase ? (_forward + _backward) * Thousandths.Of(sound.FigureChange) : 0;
        _ahead = new BassMotion(sound, earlier.Slot, later.Slot);
        _back = new BassMotion(sound, later.Slot, earlier.Slot);
        _upper = new UpperLine(sound, earlier, later, _forward, _backward);
        _ringing = RingingOn.Between(earlier, later, _forward, _backward);
        _lines = AreNeighbours ? [.. earlier.Lines.SelectMany(_ => later.Lines, LinePrice)] : [];
    }

    /// <summary>Index of the slot that comes first among the slots.</summary>
    public int Earlier => _earlier.Slot.Index;

    /// <summary>Index of the other slot.</summary>
    public int Later => _later.Slot.Index;

    /// <summary>Microseconds from a hearing of the earlier to a hearing of the later, for every pair of hearings in reach.</summary>
    public IReadOnlyList<long> Apart { get; }

    private bool AreNeighbours => _forward + _backward > 0;

    /// <summary>The link of two slots, or null where nothing that one does can matter to the other.</summary>
    public static SlotLink? Between(Instrument instrument, Sound sound, PricedSlot earlier, PricedSlot later)
    {
        var reach = instrument.LongestReach + earlier.Spread + later.Spread;
        var apart = earlier.Slot.Hearings
            .SelectMany(_ => later.Slot.Hearings, (a, b) => StrokeKinds.Microseconds(b.At) - StrokeKinds.Microseconds(a.At))
            .Where(distance => Math.Abs(distance) <= reach)
            .ToArray();
        return apart.Length == 0 && Follows(earlier.Slot, later.Slot) + Follows(later.Slot, earlier.Slot) == 0
            ? null
            : new SlotLink(instrument, sound, earlier, later, apart);
    }

    /// <summary>The prices of some candidates of the earlier slot with one of the later.</summary>
    public void PricesBefore(int later, ReadOnlySpan<int> earlier, Span<long> prices)
    {
        Span<int> columns = stackalloc int[_earlier.Kinds.Count];
        _strokes.Columns(_later.Kinds.Of(later), columns);
        for (var i = 0; i < earlier.Length; i++)
        {
            prices[i] = Sum(columns, _earlier.Kinds.Of(earlier[i]));
        }

        if (AreNeighbours)
        {
            var b = _later.Outline(later);
            for (var i = 0; i < earlier.Length; i++)
            {
                prices[i] += Neighbours(_earlier.Outline(earlier[i]), b);
            }
        }
    }

    /// <summary>The prices of some candidates of the later slot with one of the earlier.</summary>
    public void PricesAfter(int earlier, ReadOnlySpan<int> later, Span<long> prices)
    {
        Span<int> rows = stackalloc int[_later.Kinds.Count];
        _strokes.Rows(_earlier.Kinds.Of(earlier), rows);
        for (var i = 0; i < later.Length; i++)
        {
            prices[i] = Sum(rows, _later.Kinds.Of(later[i]));
        }

        if (AreNeighbours)
        {
            var a = _earlier.Outline(earlier);
            for (var i = 0; i < later.Length; i++)
            {
                prices[i] += Neighbours(a, _later.Outline(later[i]));
            }
        }
    }

    /// <summary>The same price, term by term; for reading, not for the search.</summary>
    /// <param name="instrument">The tower.</param>
    /// <param name="earlier">Number of the candidate of the earlier slot.</param>
    /// <param name="later">Number of the candidate of the later slot.</param>
    public TermPrices Terms(Instrument instrument, int earlier, int later)
    {
        var prices = new TermPrices();
        var ringing = Apart.Sum(distance => instrument.Roughness((_earlier.Kinds, earlier), (_later.Kinds, later), distance));
        prices[Term.Ringing] = ringing;
        prices[Term.Moves] = (int)Math.Min(_strokes.Sum(_earlier.Kinds.Of(earlier), _later.Kinds.Of(later)) - ringing, Thousandths.MostForbidden);
        if (AreNeighbours)
        {
            var (a, b) = (_earlier.Outline(earlier), _later.Outline(later));
            var (lineA, lineB) = (_earlier.Lines[a.Line], _later.Lines[b.Line]);
            prices.Add(_upper.Terms(a.Upper, b.Upper));
            prices[Term.NotRinging] = _ringing?.Price(a, b) ?? 0;
            prices[Term.BassLine] = BassLinePrice(lineA, lineB);
            prices[Term.Steadiness] = SteadinessPrice(lineA, lineB);
        }

        return prices;
    }

    private static int Sum(ReadOnlySpan<int> prices, ReadOnlySpan<int> kinds)
    {
        var sum = 0;
        foreach (var kind in kinds)
        {
            sum += prices[kind];
        }

        return sum;
    }

    private int Neighbours(Outline a, Outline b) =>
        _upper.Price(a.Upper, b.Upper) + _lines[(a.Line * _later.Lines.Count) + b.Line] + (_ringing?.Price(a, b) ?? 0);

    private int LinePrice(BassAndFigure a, BassAndFigure b) => BassLinePrice(a, b) + SteadinessPrice(a, b);

    private int BassLinePrice(BassAndFigure a, BassAndFigure b) =>
        (_forward * _ahead.Price(a, b)) + (_backward * _back.Price(b, a));

    private int SteadinessPrice(BassAndFigure a, BassAndFigure b) =>
        MannerOf(a) is not { } one || MannerOf(b) is not { } other || one == other ? 0 : _steady;

    // A roll is an ornament of the chord struck together, with a price and a rule of its own.
    private static Figure? MannerOf(BassAndFigure line) => Figures.Of(line.Figure) switch
    {
        { IsManner: false } => null,
        { IsRoll: true } => Figure.Together,
        var row => row.Figure,
    };

    private static int Follows(Slot first, Slot second) =>
        second.Hearings.Count(b => first.Hearings.Any(a => a.Order == b.Order - 1 && a.Until >= b.At));
}
