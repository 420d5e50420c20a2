using System.Globalization;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>The grid of a file, and where on it each onset goes.</summary>
/// <param name="Steps">Steps in a quarter, 1..48.</param>
/// <param name="Fits">Whether nearly all onsets lie on it.</param>
/// <param name="Places">For each tick at which notes begin the place on the grid.</param>
/// <param name="Rolled">The ticks of all onsets that belong to a roll, its last one included.</param>
/// <param name="Rolls">How many rolls there are.</param>
/// <param name="Moved">How many onsets, those of rolls aside, lie elsewhere than on the grid.</param>
/// <param name="Farthest">By how much at most.</param>
internal sealed record Grid(
    int Steps,
    bool Fits,
    IReadOnlyDictionary<long, GridPlace> Places,
    IReadOnlySet<long> Rolled,
    int Rolls,
    int Moved,
    Seconds Farthest)
{
    /// <summary>"sixteenths".</summary>
    public string Name => Steps switch
    {
        1 => "quarters",
        2 => "eighths",
        3 => "triplets of eighths",
        4 => "sixteenths",
        6 => "triplets of sixteenths",
        8 => "32nds",
        12 => "triplets of 32nds",
        16 => "64ths",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Steps} to a quarter"),
    };
}
