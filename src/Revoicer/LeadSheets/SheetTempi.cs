using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>The speeds of a sheet as heard.</summary>
public static class SheetTempi
{
    // The tempo of a sheet that names none, to the beat of its metre. Common practice: a quiet walking pace.
    private const double AssumedPerMinute = 84;

    /// <summary>The sheet's speeds; where it names none, 84 to the beat of its metre.</summary>
    public static TempoMap Of(LeadSheet sheet) => Of(sheet, new Tempo(sheet.Bars[0].Meter.Beat, AssumedPerMinute));

    /// <summary>The sheet's speeds, its changes within bars unfolded with the repeats.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="otherwise">The speed from the start where the sheet names none.</param>
    public static TempoMap Of(LeadSheet sheet, Tempo otherwise)
    {
        var changes = sheet.Played
            .SelectMany(p => sheet.Bars[p.Written].Tempi, (p, change) => change with { From = p.Start + change.From })
            .Prepend(new TempoChange(Beats.Zero, sheet.Tempo ?? otherwise))
            .GroupBy(c => c.From)
            .Select(same => same.Last())
            .OrderBy(c => c.From);
        return new TempoMap(changes.ToItems());
    }
}
