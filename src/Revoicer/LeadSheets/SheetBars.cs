using System.Globalization;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>Numbers the bars of a tune, finds their places in the metre, and gives each chord its stretch.</summary>
/// <param name="bars">The bars as read.</param>
/// <param name="remarks">Takes warnings of bars that their metre does not fill.</param>
internal sealed class SheetBars(IReadOnlyList<ReadBar> bars, Remarks remarks)
{
    private int _number;
    private PlacedSymbol? _symbol;
    private PlacedSymbol? _beforeEndings;

    public IReadOnlyList<WrittenBar> Written()
    {
        var written = new List<WrittenBar>();
        var filled = Beats.Zero;
        for (var i = 0; i < bars.Count; i++)
        {
            var meter = bars[i].Meter ?? FreeMeter(bars[i].Length);
            var joins = i > 0 && Joins(i, filled, meter);
            var isPickup = i == 0 && bars.Count > 1 && bars[i].Length < meter.Bar && bars[i].Meter is not null;
            _number += joins || isPickup ? 0 : 1;
            var offset = joins ? filled : isPickup ? meter.Bar - bars[i].Length : Beats.Zero;
            filled = offset + bars[i].Length;
            WarnOfLength(i, meter, joins || isPickup);
            written.Add(new WrittenBar(_number, meter, bars[i].Length, Spans(bars[i]), bars[i].EndsSection)
            {
                Offset = offset,
                Notes = bars[i].Notes.ToItems(),
                Tempi = bars[i].Tempi.ToItems(),
                Key = i == 0 ? null : bars[i].Key?.Named,
                Fermatas = bars[i].Fermatas.Distinct().ToItems(),
            });
        }

        return written;
    }

    // A bar that a repeat sign, a double bar or an unseen line parts keeps one number: its second half goes on with it.
    private bool Joins(int i, Beats filled, Meter meter) =>
        (bars[i - 1].EndsSection || bars[i].IsParted || bars[i].Opening is not null)
        && bars[i].Meter is not null
        && bars[i].Meter == bars[i - 1].Meter
        && !IsLaterEnding(i)
        && filled < meter.Bar
        && filled + bars[i].Length <= meter.Bar;

    private bool IsLaterEnding(int i) => bars[i].Ending.Count > 0 && bars[i].Ending[0] > 1;

    private void WarnOfLength(int i, Meter meter, bool isKnown)
    {
        var isAtBreak = bars[i].EndsSection || (i + 1 < bars.Count && (bars[i + 1].IsParted || bars[i + 1].Opening is not null));
        var isShort = bars[i].Length < meter.Bar;
        if (bars[i].Length != meter.Bar && bars[i].Meter is not null && !(isShort && (isKnown || isAtBreak || IsLaterEnding(i))))
        {
            remarks.Warn(
                bars[i].Where!,
                string.Create(CultureInfo.InvariantCulture, $"bar {_number} has {LengthWords.Quarters(bars[i].Length)} and is taken as it is"),
                $"{LengthWords.Quarters(meter.Bar)} in {meter}");
        }
    }

    // In free metre a bar is its own metre, in the largest note value that fills it.
    private static Meter FreeMeter(Beats length)
    {
        for (var lower = 4; lower <= 16; lower *= 2)
        {
            var values = length * lower / 4;
            if (values.Denominator == 1)
            {
                return new Meter((int)values.Numerator, lower);
            }
        }

        return new Meter((int)Beats.WholeTimes(length, Beats.OfQuarters(1)) + 1, 4);
    }

    // A symbol lasts until the next; a later ending goes on from what stood before the first.
    private Items<ChordSpan> Spans(ReadBar bar)
    {
        if (bar.Ending.Count > 0 && bar.Ending[0] == 1)
        {
            _beforeEndings = _symbol;
        }
        else if (bar.Ending.Count > 0)
        {
            _symbol = _beforeEndings;
        }

        var spans = new List<ChordSpan>();
        var held = _symbol ?? new PlacedSymbol(Beats.Zero, null, bar.Where!);
        IEnumerable<PlacedSymbol> symbols = bar.Symbols is [{ Start: var first }, ..] && first == Beats.Zero
            ? bar.Symbols
            : [held with { Start = Beats.Zero }, .. bar.Symbols];
        foreach (var symbol in symbols)
        {
            if (spans is [.., var last])
            {
                spans[^1] = last with { Length = symbol.Start - last.Start };
            }

            spans.Add(new ChordSpan(symbol.Start, bar.Length - symbol.Start, symbol.Symbol, symbol.Where) { IsHeld = !bar.Symbols.Contains(symbol) });
            _symbol = symbol;
        }

        return spans.ToItems();
    }
}
