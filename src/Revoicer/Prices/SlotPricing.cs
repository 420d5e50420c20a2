using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// The prices of a sheet while they are worked out: slot by slot first, which soon tells what the whole costs at the least,
/// and only then between slots, which is most of the work.
/// </summary>
public sealed class SlotPricing
{
    // A roll has at most so many strokes.
    private const int MostRolled = 8;

    private readonly Instrument _instrument;
    private readonly Sound _sound;
    private readonly SlotPlan _plan;
    private readonly ChordsInTime _chords;
    private readonly TuneInTime _tune;
    private readonly List<PricedSlot> _slots = [];
    private readonly long _ofTune;

    /// <summary>Begins with no slot priced.</summary>
    /// <param name="instrument">The tower.</param>
    /// <param name="sound">The weights.</param>
    /// <param name="plan">The slots.</param>
    public SlotPricing(Instrument instrument, Sound sound, SlotPlan plan)
    {
        (_instrument, _sound, _plan) = (instrument, sound, plan);
        _chords = new ChordsInTime(plan, instrument.Tower.Transposition);
        _tune = new TuneInTime(instrument, sound, plan.Tune);
        _ofTune = _tune.Own(_chords) + _tune.OutsideHome();
        Least = _ofTune;
    }

    /// <summary>No choice costs less in all, the tune with itself included: the cheapest candidate of each slot so far, by itself.</summary>
    public long Least { get; private set; }

    /// <summary>The price of the tune with itself.</summary>
    internal long OfTune => _ofTune;

    /// <summary>
    /// Hearings farther apart than this, from beginning to beginning in microseconds, have nothing to do with each other: the
    /// reach of the tower, and what strokes of a slot can lie after its beginning, or before it where it is rolled.
    /// </summary>
    internal long LongestReach => _instrument.LongestReach
        + StrokeKinds.Microseconds(new Seconds(_plan.Slots.Max(s => s.Duration.Value) + (2 * MostRolled * _sound.RollStep.Value)));

    /// <summary>Prices one slot by itself; it may have another number than in the plan.</summary>
    internal PricedSlot Priced(Slot slot, Items<Candidate> candidates) => new(_instrument, _sound, slot, candidates, _chords, _tune);

    /// <summary>The same for all that is listed for a slot, less what cannot be part of a cheapest choice.</summary>
    internal PricedSlot Useful(Slot slot, Items<Candidate> listed)
    {
        var priced = Priced(slot, listed);
        if (slot.LeadsTo is null)
        {
            return priced;
        }

        var useful = new UsefulApproaches(_instrument, _sound).Of(priced);
        return useful.Count == listed.Count ? priced : Priced(slot, useful);
    }

    /// <summary>The prices of some slots as a sheet of their own, what the tune costs with itself left out.</summary>
    /// <param name="plan">The slots, numbered from 0.</param>
    /// <param name="slots">The same, priced by themselves.</param>
    /// <param name="cancel">Stops the work.</param>
    internal SheetPrices Linked(SlotPlan plan, PricedSlot[] slots, CancellationToken cancel) =>
        new(_instrument, plan, slots, Links(slots, cancel), tune: 0);

    /// <summary>The prices of the whole plan where of each slot only some candidates are left.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="candidates">The candidates of each slot.</param>
    /// <param name="cancel">Stops the work.</param>
    internal SheetPrices Linked(SlotPlan plan, IReadOnlyList<Items<Candidate>> candidates, CancellationToken cancel)
    {
        var slots = plan.Slots.AsParallel().AsOrdered().WithCancellation(cancel).Select(slot => Priced(slot, candidates[slot.Index])).ToArray();
        return new SheetPrices(_instrument, plan, slots, Links(slots, cancel), _ofTune);
    }

    /// <summary>The link of two slots; null where they have nothing to do with each other.</summary>
    internal SlotLink? Link(PricedSlot one, PricedSlot other) => SlotLink.Between(_instrument, _sound, one, other);

    /// <summary>Prices the next slots by themselves.</summary>
    /// <param name="candidates">Their candidates, in the order of the slots.</param>
    /// <param name="keepsAll">Whether what cannot be part of a cheapest choice stays, as an answer may have to hold it.</param>
    /// <param name="cancel">Stops the work.</param>
    public void Add(IReadOnlyList<Items<Candidate>> candidates, bool keepsAll, CancellationToken cancel)
    {
        var first = _slots.Count;
        var priced = new PricedSlot[candidates.Count];
        Parallel.For(0, priced.Length, new ParallelOptions { CancellationToken = cancel }, i =>
            priced[i] = keepsAll ? Priced(_plan.Slots[first + i], candidates[i]) : Useful(_plan.Slots[first + i], candidates[i]));
        _slots.AddRange(priced);
        Least += priced.Sum(slot => slot.Prices.Min());
    }

    /// <summary>The prices of all slots, which have all been added, with those of every pair that can hear each other.</summary>
    /// <param name="cancel">Stops the work.</param>
    public SheetPrices Linked(CancellationToken cancel)
    {
        PricedSlot[] slots = [.. _slots];
        return new SheetPrices(_instrument, _plan, slots, Links(slots, cancel), _ofTune);
    }

    private SlotLink[] Links(PricedSlot[] slots, CancellationToken cancel)
    {
        var reach = _instrument.LongestReach + (2 * slots.Max(s => s.Spread));
        var later = HearingsInReach.Later([.. slots.Select(s => s.Slot)], reach);
        var links = new SlotLink[slots.Length][];
        Parallel.For(0, slots.Length, new ParallelOptions { CancellationToken = cancel }, i => links[i] =
            [.. later[i].Select(other => SlotLink.Between(_instrument, _sound, slots[i], slots[other])).OfType<SlotLink>()]);
        return [.. links.SelectMany(l => l)];
    }
}
