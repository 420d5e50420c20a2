using Revoicer.Arrangements;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Advice;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer;

/// <summary>
/// The octave of the tune, an outer choice of a draft: the one asked for, else the cheapest, of equals the nearest to the written.
/// </summary>
/// <param name="sheet">The sheet.</param>
/// <param name="placing">Places its tune.</param>
/// <param name="search">Searches with the tune in one octave.</param>
/// <param name="wish">What else is asked.</param>
internal sealed class OctaveSearch(LeadSheet sheet, TunePlacing placing, DraftSearch search, DraftWish wish)
{
    // What is left of a time limit may go in such a part into octaves that were not asked for. Estimate.
    private const double ForOthers = 0.1;

    private readonly Dictionary<int, (long? Price, bool IsExact)> _known = [];
    private PlanTried.Searched? _best;
    private PlanTried.Searched? _impossible;

    /// <summary>Searches; null where there is an answer, else why there is none.</summary>
    /// <param name="cancel">Stops what is done when there is an answer.</param>
    public Drafting? Run(CancellationToken cancel)
    {
        PlacedTune?[] all = placing.HasTune ? [.. placing.All()] : [null];
        PlacedTune?[] tunes = Asked(all) is { } octave && placing.HasTune ? [.. all.Where(t => t?.Octaves == octave)] : all;
        if (tunes.Length == 0)
        {
            return new Drafting.Unplayable([placing.WhereItFits(wish.Octave)]);
        }

        // Where the tune by itself costs least, its distance from home and its own clash, the whole mostly does too; the others
        // are then soon seen to be too dear.
        foreach (var plan in tunes.Select(t => search.Cut(t)).OrderBy(search.OfTune).ThenByDescending(p => p.Tune?.Octaves))
        {
            if (plan.Slots.Count == 0)
            {
                return new Drafting.NoChords(NoChords(placing.HasTune));
            }

            if (WishPlaces.Astray(wish.Wishes, sheet, plan) is { Count: > 0 } astray)
            {
                return new Drafting.Astray(astray);
            }

            Take(plan, search.Best(plan, _best is null ? long.MaxValue : Whole(_best), isNeeded: _best is null));
        }

        if (_best is null)
        {
            return search.Refusal(_impossible!.Prices, (Outcome.Impossible)_impossible.Outcome);
        }

        LookAtOthers(all.Except(tunes), cancel);
        return null;
    }

    /// <summary>The answer, once there is one.</summary>
    public (SheetPrices Prices, Outcome.Found Found) Best => (_best!.Prices, (Outcome.Found)_best.Outcome);

    /// <summary>What the other octaves would have cost.</summary>
    public Items<OtherOctave> Others => OfTune is not { } taken ? [] : _known
        .Where(k => k.Key != taken)
        .OrderBy(k => Math.Abs(k.Key - taken)).ThenByDescending(k => k.Key)
        .Take(OtherOctave.MostTold)
        .Select(k => new OtherOctave(k.Key, k.Value.Price - Whole(_best!), k.Value.IsExact))
        .ToItems();

    private int? OfTune => _best!.Prices.Plan.Tune?.Octaves;

    // To stay close is also to leave the tune in its octave, if the tower has it there.
    private int? Asked(PlacedTune?[] tunes) =>
        wish.Octave ?? (wish.Original is { StayClose: > 0 } && tunes.Any(t => t?.Octaves == 0) ? 0 : null);

    private void Take(SlotPlan plan, PlanTried tried)
    {
        var octaves = plan.Tune?.Octaves ?? 0;
        switch (tried)
        {
            case PlanTried.TooDear dear:
                _known[octaves] = (dear.Least, IsExact: false);
                break;
            case PlanTried.Searched { Outcome: Outcome.Impossible } none:
                _known[octaves] = (null, IsExact: true);
                _impossible = _impossible is null || IsNearer(none, _impossible) ? none : _impossible;
                break;
            case PlanTried.Searched { Outcome: Outcome.Found found } made:
                _known[octaves] = (found.Bound + made.Prices.Tune, found.Bound >= found.Price);
                _best = _best is null || Whole(made) < Whole(_best) || (Whole(made) == Whole(_best) && IsNearer(made, _best)) ? made : _best;
                break;
        }
    }

    // Not searched: the cheapest candidates by themselves say what each costs at the least.
    private void LookAtOthers(IEnumerable<PlacedTune?> tunes, CancellationToken cancel)
    {
        using var part = wish.Effort.Deadline.Part(ForOthers);
        using var stop = part.With(cancel);
        try
        {
            foreach (var tune in tunes.OfType<PlacedTune>().OrderBy(t => Math.Abs(t.Octaves - OfTune!.Value)).Take(OtherOctave.MostTold))
            {
                _known[tune.Octaves] = (search.Least(search.Cut(tune), stop.Token), IsExact: false);
            }
        }
        catch (Exception e) when (BrokenOff.Is(e) && !cancel.IsCancellationRequested)
        {
            // What was not looked at is not told of.
        }
    }

    private static long Whole(PlanTried.Searched made) => ((Outcome.Found)made.Outcome).Price + made.Prices.Tune;

    private static bool IsNearer(PlanTried.Searched one, PlanTried.Searched than) => Farness(one) < Farness(than);

    private static int Farness(PlanTried.Searched made) => Math.Abs(made.Prices.Plan.Tune?.Octaves ?? 0);

    private string NoChords(bool hasTune) => (wish.Original, hasTune) switch
    {
        (not null, _) => $"{sheet.Title} has no chord symbols, and its notes make no chord that was found; write chord symbols over the tune",
        (null, true) => $"{sheet.Title} has a tune but no chord symbols, and a draft needs them; write them over the tune. Where the file has more "
            + "voices than the tune, 'revoicer revoice' finds chords from their notes",
        _ => $"{sheet.Title} has no chord symbols, so there is nothing to voice",
    };
}
