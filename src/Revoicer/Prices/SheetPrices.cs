using Revoicer.Bells;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// The price of every candidate of every slot, and of every pair of candidates of slots that can hear each other: the
/// whole of what is to be made small. All in thousandths of a clash unit.
/// </summary>
public sealed class SheetPrices : IChoicePrices
{
    private readonly PricedSlot[] _slots;
    private readonly SlotLink[] _links;

    // For each slot the slots it is linked with, in rising order, and the links.
    private readonly int[][] _linked;
    private readonly SlotLink[][] _linkOf;

    internal SheetPrices(Instrument instrument, SlotPlan plan, PricedSlot[] slots, SlotLink[] links, long tune)
    {
        Instrument = instrument;
        Plan = plan;
        Tune = tune;
        _slots = slots;
        _links = links;
        var of = slots.Select(_ => new SortedList<int, SlotLink>()).ToArray();
        foreach (var link in links)
        {
            of[link.Earlier].Add(link.Later, link);
            of[link.Later].Add(link.Earlier, link);
        }

        _linked = [.. of.Select(row => row.Keys.ToArray())];
        _linkOf = [.. of.Select(row => row.Values.ToArray())];
    }

    /// <summary>The tower's tables.</summary>
    public Instrument Instrument { get; }

    /// <summary>The slots.</summary>
    public SlotPlan Plan { get; }

    /// <summary>What the tune costs with itself; 0 without one. No voicing changes it.</summary>
    public long Tune { get; }

    /// <inheritdoc/>
    public int Count => _slots.Length;

    /// <summary>Works out all tables.</summary>
    /// <param name="instrument">The tower.</param>
    /// <param name="sound">The weights.</param>
    /// <param name="plan">The slots.</param>
    /// <param name="candidates">The candidates of each slot, in the order of the slots.</param>
    /// <param name="cancel">Stops the work.</param>
    public static SheetPrices Of(Instrument instrument, Sound sound, SlotPlan plan, IReadOnlyList<Items<Candidate>> candidates, CancellationToken cancel)
    {
        var pricing = new SlotPricing(instrument, sound, plan);
        pricing.Add(candidates, keepsAll: false, cancel);
        return pricing.Linked(cancel);
    }

    /// <summary>These slots with others behind them, of which the prices with these are known but not those among themselves.</summary>
    /// <param name="plan">All of these slots and the others.</param>
    /// <param name="others">The others.</param>
    /// <param name="links">What these and the others have to do with each other.</param>
    internal SheetPrices Beside(SlotPlan plan, IEnumerable<PricedSlot> others, IEnumerable<SlotLink> links) =>
        new(Instrument, plan, [.. _slots, .. others], [.. _links, .. links], Tune);

    /// <summary>A slot with what it costs by itself.</summary>
    internal PricedSlot Slot(int slot) => _slots[slot];

    /// <summary>The candidates of a slot.</summary>
    public Items<Candidate> Candidates(int slot) => _slots[slot].Candidates;

    /// <summary>How far a candidate carries with the tune over it, re one stroke of C4 over the same time.</summary>
    public Decibels Carry(int slot, int candidate) => _slots[slot].Carry(candidate);

    /// <summary>A stroke of the tune may lie so far under what is struck with it before that is priced and said.</summary>
    public static Decibels TuneFloor => TuneHeard.Floor;

    /// <summary>By how much each stroke of the tune in a slot lies under what a candidate strikes with it, timed from the slot.</summary>
    public IEnumerable<(Seconds After, Decibels Under)> TuneLevels(int slot, int candidate) => _slots[slot].TuneLevels(candidate);

    /// <summary>
    /// How far that chord of a choice carries which carries least of those that are not quick and not silent; null where
    /// there is none.
    /// </summary>
    /// <param name="choice">For each slot the number of a candidate.</param>
    public Decibels? WeakestCarry(IReadOnlyList<int> choice)
    {
        double[] carries =
        [
            .. Plan.Slots.Where(s => !s.IsQuick).Select(s => Carry(s.Index, choice[s.Index]).Value).Where(carry => carry > SlotPrice.Silence.Value),
        ];
        return carries.Length == 0 ? null : new Decibels(carries.Min());
    }

    /// <summary>The price of a candidate by itself, term by term, over all hearings.</summary>
    public TermPrices TermsAlone(int slot, int candidate) => _slots[slot].Terms(candidate);

    /// <summary>The price of a candidate with all others as chosen, term by term: its own, and that of every pair it is in.</summary>
    /// <param name="choice">For each slot the number of a candidate; its entry for the slot is not looked at.</param>
    /// <param name="slot">The slot.</param>
    /// <param name="candidate">The candidate.</param>
    public TermPrices WithOthers(IReadOnlyList<int> choice, int slot, int candidate)
    {
        var prices = TermsAlone(slot, candidate);
        foreach (var link in _linkOf[slot])
        {
            prices.Add(link.Earlier == slot
                ? link.Terms(Instrument, candidate, choice[link.Later])
                : link.Terms(Instrument, choice[link.Earlier], candidate));
        }

        return prices;
    }

    /// <summary>The price of a whole choice, term by term: each candidate by itself and every pair once.</summary>
    /// <param name="choice">For each slot the number of a candidate.</param>
    public TermPrices WholeTerms(IReadOnlyList<int> choice)
    {
        var prices = new TermPrices();
        for (var slot = 0; slot < Count; slot++)
        {
            prices.Add(TermsAlone(slot, choice[slot]));
        }

        foreach (var link in _links)
        {
            prices.Add(link.Terms(Instrument, choice[link.Earlier], choice[link.Later]));
        }

        return prices;
    }

    /// <summary>Whether limbs and bells have the time that a choice asks of them, from every chord to every other.</summary>
    public bool CanBeMoved(IReadOnlyList<int> choice) =>
        _slots.All(slot => slot.Terms(choice[slot.Slot.Index])[Term.Moves] < Thousandths.Forbidden)
        && _links.All(link => link.Terms(Instrument, choice[link.Earlier], choice[link.Later])[Term.Moves] < Thousandths.Forbidden);

    /// <inheritdoc/>
    public ReadOnlySpan<long> Alone(int slot) => _slots[slot].Prices;

    /// <inheritdoc/>
    public IReadOnlyList<int> Linked(int slot) => _linked[slot];

    /// <inheritdoc/>
    public void PairPrices(int slot, int candidate, int other, ReadOnlySpan<int> candidates, Span<long> prices)
    {
        var place = Array.BinarySearch(_linked[slot], other);
        var link = place >= 0
            ? _linkOf[slot][place]
            : throw new ArgumentOutOfRangeException(nameof(other), other, $"slot {slot} has no prices with it");
        if (link.Earlier == slot)
        {
            link.PricesAfter(candidate, candidates, prices);
        }
        else
        {
            link.PricesBefore(candidate, candidates, prices);
        }
    }
}
