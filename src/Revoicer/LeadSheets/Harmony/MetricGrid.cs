using Revoicer.Music;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>Where in its metre a place of a bar lies.</summary>
internal static class MetricGrid
{
    /// <summary>Whether it is a strong beat.</summary>
    public static bool IsStrong(WrittenBar bar, Beats place) => bar.Meter.IsStrong(bar.Offset + place);

    /// <summary>Whether it is a beat.</summary>
    public static bool IsOnBeat(WrittenBar bar, Beats place) => IsOn(bar.Meter.Beat, bar.Offset + place);

    /// <summary>Whether a chord could change there: on a beat or half a beat, a third of a dotted one.</summary>
    public static bool IsOnPart(WrittenBar bar, Beats place) =>
        IsOn(bar.Meter.Beat / (bar.Meter.IsCompound ? 3 : 2), bar.Offset + place);

    private static bool IsOn(Beats grid, Beats place) => grid * Beats.WholeTimes(place, grid) == place;
}
