namespace Revoicer.LeadSheets.Midi;

/// <summary>A place on a grid that begins anew with every bar.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="Step">Steps of the grid from the bar's start; the place lies before the bar's end.</param>
internal readonly record struct GridPlace(int Bar, int Step) : IComparable<GridPlace>
{
    /// <inheritdoc/>
    public int CompareTo(GridPlace other) => (Bar, Step).CompareTo((other.Bar, other.Step));
}

/// <summary>The place of a grid that lies nearest to a tick.</summary>
/// <param name="Place">The place.</param>
/// <param name="Ticks">How far it lies from the tick; 0 as well where it lies between two ticks of which this is one.</param>
internal readonly record struct NearestPlace(GridPlace Place, double Ticks);
