using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// Finds the grid of a file: the coarsest on which all onsets lie exactly; where there is none, the coarsest down to triplets
/// of 32nds near which nearly all lie; else that finest one. A roll counts by its last stroke.
/// </summary>
/// <param name="notes">All notes of the file.</param>
/// <param name="bars">Its bars.</param>
/// <param name="times">When ticks are heard.</param>
/// <param name="division">Ticks of a quarter.</param>
internal sealed class GridSearch(IReadOnlyList<SoundedNote> notes, BarLines bars, TickTimes times, int division)
{
    // The note values of common use, coarsest first; the finest is taken where none fits.
    private static readonly int[] Usual = [1, 2, 3, 4, 6, 8, 12];

    // Others are looked for among exact places alone. That so many onsets off the usual grids lie on another by chance has to be
    // less likely than 1 in 100 for one of 40 grids.
    private static readonly int[] Rare = [.. Enumerable.Range(1, 48).Except(Usual)];
    private const double LeastOdds = 4_000;

    // A player at a keyboard is out by so much at most, of a short step by a fifth of it; nearly all are 95 in 100. Estimates.
    private static readonly Seconds Near = new(0.03);
    private const double NearInSteps = 0.2;
    private const double NearlyAll = 0.95;

    private readonly IReadOnlyList<Onset> _onsets = Onset.All(notes);
    private readonly RollSearch _rolls = new(Onset.All(notes), times);

    /// <summary>The grid.</summary>
    public Grid Find()
    {
        var off = _onsets.Count(o => bars.Nearest(o.Tick, Usual[^1]).Ticks > 0);
        var exact = Usual.Concat(Rare.Where(steps => Math.Pow((double)division / steps, off) >= LeastOdds))
            .FirstOrDefault(steps => Misfits(steps, isExact: true) == 0);
        if (exact > 0)
        {
            return Of(exact, Finer(exact), isExact: true, fits: true);
        }

        var near = Usual.FirstOrDefault(steps => Misfits(steps, isExact: false) <= (1 - NearlyAll) * _onsets.Sum(o => o.Count));
        return near > 0 ? Of(near, near, isExact: false, fits: true) : Of(Usual[^1], Usual[^1], isExact: false, fits: false);
    }

    // Where ends lie exactly on a finer grid of common use that holds this one, it is taken: then notes come through as they
    // are. Other ends are those of a touch or of a bell's ring.
    private int Finer(int steps)
    {
        var ends = notes.Select(n => n.Off).Distinct().ToArray();
        var finer = Usual.FirstOrDefault(fine => fine % steps == 0 && ends.All(end => bars.Nearest(end, fine).Ticks == 0));
        return finer > 0 ? finer : steps;
    }

    private int Misfits(int steps, bool isExact)
    {
        var isOnGrid = IsOnGrid(steps, isExact);
        var ends = _rolls.Ends(isOnGrid);
        return _onsets.Index().Where(o => !isOnGrid[o.Index] && ends[o.Index] == o.Index).Sum(o => o.Item.Count);
    }

    private bool[] IsOnGrid(int steps, bool isExact) => [.. _onsets.Select(o =>
    {
        var ticks = bars.Nearest(o.Tick, steps).Ticks;
        return ticks == 0 || (!isExact && ticks <= NearInSteps * division / steps && (times.TickFrom(o.Tick) * ticks) <= Near);
    })];

    // Rolls are those of the coarser grid; places are told on the finer.
    private Grid Of(int coarse, int fine, bool isExact, bool fits)
    {
        var ends = _rolls.Ends(IsOnGrid(coarse, isExact));
        var nearest = _onsets.Select(o => bars.Nearest(o.Tick, fine)).ToArray();
        var moved = _onsets.Index().Where(o => ends[o.Index] == o.Index && nearest[o.Index].Ticks > 0).ToArray();
        var rolls = ends.Index().Where(e => e.Item != e.Index).ToArray();
        return new Grid(
            fine,
            fits,
            _onsets.Index().ToDictionary(o => o.Item.Tick, o => nearest[ends[o.Index]].Place),
            rolls.SelectMany(e => new[] { _onsets[e.Index].Tick, _onsets[e.Item].Tick }).ToHashSet(),
            rolls.Select(e => e.Item).Distinct().Count(),
            moved.Sum(o => o.Item.Count),
            moved.Select(o => times.TickFrom(o.Item.Tick) * nearest[o.Index].Ticks).Append(Seconds.Zero).Max());
    }
}
