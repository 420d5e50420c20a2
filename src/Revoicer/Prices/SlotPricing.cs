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
        _ofTune = _tune.Own(_chords);
        Least = _ofTune;
    }

    /// <summary>No choice costs less in all, the tune with itself included: the cheapest candidate of each slot so far, by itself.</summary>
    public long Least { get; private set; }

    /// <summary>Prices the next slots by themselves.</summary>
    /// <param name="candidates">Their candidates, in the order of the slots.</param>
    /// <param name="cancel">Stops the work.</param>
    public void Add(IReadOnlyList<Items<Candidate>> candidates, CancellationToken cancel)
    {
        var first = _slots.Count;
        var priced = new PricedSlot[candidates.Count];
        Parallel.For(0, priced.Length, new ParallelOptions { CancellationToken = cancel }, i =>
            priced[i] = new PricedSlot(_instrument, _sound, _plan.Slots[first + i], candidates[i], _chords, _tune));
        _slots.AddRange(priced);
        Least += priced.Sum(slot => slot.Prices.Min());
    }

    /// <summary>The prices of all slots, which have all been added, with those of every pair that can hear each other.</summary>
    /// <param name="cancel">Stops the work.</param>
    public SheetPrices Linked(CancellationToken cancel)
    {
        PricedSlot[] slots = [.. _slots];
        var later = WithinReach(slots);
        var links = new SlotLink[slots.Length][];
        Parallel.For(0, slots.Length, new ParallelOptions { CancellationToken = cancel }, i => links[i] =
            [.. later[i].Select(other => SlotLink.Between(_instrument, _sound, slots[i], slots[other])).OfType<SlotLink>()]);
        return new SheetPrices(_instrument, _plan, slots, [.. links.SelectMany(l => l)], _ofTune);
    }

    // For each slot the later ones of which a hearing is so near to one of its own that there may be something between them:
    // within the longest reach, or next to each other.
    private SortedSet<int>[] WithinReach(PricedSlot[] slots)
    {
        var reach = _instrument.LongestReach + (2 * slots.Max(s => s.Spread));
        var heard = slots
            .SelectMany(s => s.Slot.Hearings, (s, hearing) => (s.Slot.Index, hearing.Order, At: StrokeKinds.Microseconds(hearing.At)))
            .OrderBy(h => h.Order)
            .ToArray();
        SortedSet<int>[] later = [.. slots.Select(_ => new SortedSet<int>())];
        for (var a = 0; a < heard.Length; a++)
        {
            for (var b = a + 1; b < heard.Length && (b == a + 1 || heard[b].At - heard[a].At <= reach); b++)
            {
                if (heard[a].Index != heard[b].Index)
                {
                    later[Math.Min(heard[a].Index, heard[b].Index)].Add(Math.Max(heard[a].Index, heard[b].Index));
                }
            }
        }

        return later;
    }
}
