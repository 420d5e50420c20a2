using Revoicer.Prices;
using Revoicer.Solving.Rules;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Windows;

/// <summary>
/// Searches a long piece in windows of whole phrases, so that the prices of a few windows alone have to be at hand. Each is
/// solved by itself and then changed for the better, slot by slot, beside what is chosen around it: once when the next is
/// solved, and again when that has been changed. What two windows cost together is not negative, so the bounds of all add up
/// to one of the piece.
/// </summary>
internal sealed class LongSearch
{
    // Windows that are solved together; on more cores more could be, but each takes room. And the part of what is left of a
    // time limit after which no window is begun, as there is still something to do then. Estimates.
    private const int AtOnce = 4;
    private const double ForTheSearch = 0.85;

    private const int MostFittings = 2;

    private readonly SlotPlan _plan;
    private readonly SlotPricing _pricing;
    private readonly Func<Slot, Items<Candidate>> _list;
    private readonly IReadOnlyList<Rule> _rules;
    private readonly ProofEffort _effort;
    private readonly CancellationToken _stop;
    private readonly CancellationToken _cancel;
    private readonly (int From, int Count)[] _windows;
    private readonly int[] _windowOf;

    // For each window the slots of others that may have to do with it.
    private readonly SortedSet<int>[] _around;
    private readonly PieceWindow?[] _solved;
    private bool _wasCutShort;

    /// <param name="plan">The slots.</param>
    /// <param name="pricing">Prices them.</param>
    /// <param name="list">Lists the candidates of a slot.</param>
    /// <param name="rules">What every arrangement keeps; none that asks for a least over several windows.</param>
    /// <param name="effort">What each window may spend on its proof, and the deadline.</param>
    /// <param name="stop">Stops what has to be done before there is an answer.</param>
    /// <param name="cancel">Stops the work.</param>
    public LongSearch(
        SlotPlan plan, SlotPricing pricing, Func<Slot, Items<Candidate>> list, IReadOnlyList<Rule> rules, ProofEffort effort, CancellationToken stop, CancellationToken cancel)
    {
        (_plan, _pricing, _list, _rules, _effort, _stop, _cancel) = (plan, pricing, list, rules, effort, stop, cancel);
        _windows = [.. SlotWindows.Of(plan.Slots.Count, slot => plan.Slots[slot].Phrase != plan.Slots[slot - 1].Phrase)];
        _windowOf = [.. _windows.SelectMany((w, number) => Enumerable.Repeat(number, w.Count))];
        _solved = new PieceWindow?[_windows.Length];
        _around = [.. _windows.Select(_ => new SortedSet<int>())];
        foreach (var (slot, later) in HearingsInReach.Later(plan.Slots, pricing.LongestReach).Index())
        {
            foreach (var other in later.Where(o => _windowOf[o] != _windowOf[slot]))
            {
                _around[_windowOf[slot]].Add(other);
                _around[_windowOf[other]].Add(slot);
            }
        }
    }

    /// <summary>Where given, of each slot these candidates alone are looked at, and nothing is said of the slots.</summary>
    public FewCandidates? Few { get; init; }

    /// <summary>Finished windows, which stand where there is no time to solve them; null where there is no answer then.</summary>
    public IReadOnlyList<PieceWindow>? Instead { get; init; }

    /// <summary>What every choice costs at the least, the tune included, as far as that was seen.</summary>
    public long Least { get; private set; }

    /// <summary>The windows, once there is an answer.</summary>
    public IReadOnlyList<PieceWindow> Windows => [.. _solved.OfType<PieceWindow>()];

    /// <summary>
    /// The answer, with prices of those candidates that are chosen or of which something is said; null where every choice costs more than a price, the tune
    /// included. Where rules cannot be kept the prices are those of the first window in which they cannot.
    /// </summary>
    /// <exception cref="OperationCanceledException">It was stopped, and nothing is there instead.</exception>
    /// <param name="most">That price.</param>
    public (SheetPrices Prices, Outcome Outcome)? Best(long most)
    {
        using var until = _effort.Deadline.Part(ForTheSearch);
        using var halt = until.With(_cancel);
        var (stop, needed) = Instead is null ? (_stop, _stop) : (halt.Token, _cancel);
        var rest = most == long.MaxValue ? new long[_windows.Length] : Leasts(most);
        Least = _pricing.OfTune + rest.Sum();
        foreach (var together in Enumerable.Range(0, _windows.Length).Chunk(AtOnce))
        {
            if (Least > most)
            {
                return null;
            }

            if (Instead is not null && until.HasPassed)
            {
                break;
            }

            using var part = until.Part((double)together.Length / (_windows.Length - together[0]));
            var solved = together.AsParallel().AsOrdered().WithCancellation(needed).Select(w => InTime(_windows[w], part, stop)).ToArray();
            needed.ThrowIfCancellationRequested();
            _wasCutShort |= part.HasPassed;
            if (solved.Select(s => s.Without).FirstOrDefault(p => p is not null) is { } prices)
            {
                return Few is null ? (prices, Explanation.Of(prices, _rules, _stop)) : null;
            }

            foreach (var (number, (found, _)) in together.Zip(solved))
            {
                _solved[number] = found;
                Least += found is null ? 0 : found.Bound - rest[number];
            }

            Advance();
        }

        _wasCutShort |= _solved.Contains(null);
        for (var w = 0; w < _solved.Length; w++)
        {
            _solved[w] ??= Instead![w];
        }

        Advance();
        return Joined();
    }

    // What came of a window; prices alone where no choice of it keeps the rules, and nothing where time was too short.
    private (PieceWindow? Found, SheetPrices? Without) InTime((int From, int Count) window, Deadline part, CancellationToken stop)
    {
        try
        {
            return Solved(window, part, stop);
        }
        catch (Exception e) when (BrokenOff.Is(e))
        {
            return (null, null);
        }
    }

    // For each window the cheapest candidates by themselves; windows are left out once that is too much.
    private long[] Leasts(long most)
    {
        if (Instead is not null)
        {
            return [.. Instead.Select(w => w.Bound)];
        }

        var leasts = new long[_windows.Length];
        for (var w = 0; w < leasts.Length && _pricing.OfTune + leasts.Sum() <= most; w++)
        {
            leasts[w] = Priced(_windows[w], _stop).Sum(s => s.Prices.Min());
        }

        return leasts;
    }

    private PricedSlot[] Priced((int From, int Count) window, CancellationToken stop)
    {
        var priced = new PricedSlot[window.Count];
        var phrases = SlotWindows.Phrases(_plan, window.From, window.Count);
        Parallel.For(0, window.Count, new ParallelOptions { CancellationToken = stop }, i =>
        {
            var slot = _plan.Slots[window.From + i] with { Index = i, Phrase = phrases[_plan.Slots[window.From + i].Phrase] };
            priced[i] = Few is { } few ? _pricing.Priced(slot, few.Of(_plan.Slots[window.From + i])) : _pricing.Useful(slot, _list(slot));
        });
        return priced;
    }

    private (PieceWindow? Found, SheetPrices? Without) Solved((int From, int Count) window, Deadline part, CancellationToken stop)
    {
        var priced = Priced(window, stop);
        var plan = new SlotPlan(priced.Select(s => s.Slot).ToItems(), priced[^1].Slot.Phrase + 1) { Tune = _plan.Tune };
        var prices = _pricing.Linked(plan, priced, stop);
        var book = RuleBook.For(_rules, prices);
        return Search.Playable(prices, book, _effort with { Deadline = part }, stop) is { } found
            ? (new PieceWindow(window.From, prices, _rules, book, found.Choice, Few?.Least(window.From, window.Count) ?? found.Bound), null)
            : (null, prices);
    }

    // Takes every window as far as those around it allow; in an order that does not depend on how many were solved together.
    private void Advance()
    {
        bool moved;
        do
        {
            moved = false;
            for (var w = 0; w < _solved.Length; w++)
            {
                moved |= _solved[w] is { IsFinished: false } window && (window.Fittings < MostFittings ? Fit(w, window) : Finish(w, window));
            }
        }
        while (moved);
    }

    private bool Fit(int number, PieceWindow window)
    {
        // A window heard next to this one but written far behind it, as after a repeat, is not waited for.
        var around = _around[number].Where(s => _windowOf[s] <= number + 1).ToArray();
        if (!around.Select(s => _windowOf[s]).Distinct().All(w => _solved[w] is { } other && other.Fittings >= Needed(w)))
        {
            return false;
        }

        window.Fit(Singles(around, window), _pricing.Link, _effort.Deadline, _cancel);
        return true;

        int Needed(int other) => other > number ? window.Fittings : other == number - 1 ? window.Fittings + 1 : MostFittings;
    }

    private bool Finish(int number, PieceWindow window)
    {
        if (!_around[number].Select(s => _windowOf[s]).Distinct().All(w => _solved[w] is { Fittings: MostFittings }))
        {
            return false;
        }

        if (Few is not null)
        {
            window.Leave();
            return true;
        }

        window.Finish(Singles([.. _around[number]], window), _pricing.Link, _effort.Deadline, _cancel);
        return true;
    }

    // Slots with what is chosen for them alone, numbered behind those of a window; phrases that it has no part in are one.
    private PricedSlot[] Singles(int[] slots, PieceWindow window)
    {
        var phrases = SlotWindows.Phrases(_plan, window.From, window.Count);
        Slot Behind(int slot, int i) => _plan.Slots[slot] with { Index = window.Count + i, Phrase = phrases.GetValueOrDefault(_plan.Slots[slot].Phrase, phrases.Count) };
        return [.. slots.Select((slot, i) => _pricing.Priced(Behind(slot, i), [_solved[_windowOf[slot]]!.At(slot)]))];
    }

    // All windows together; null where it cannot be played so, which only shows in the whole.
    private (SheetPrices Prices, Outcome Outcome)? Joined()
    {
        var windows = _solved.OfType<PieceWindow>().ToArray();
        var candidates = windows.SelectMany(w => w.Kept).ToArray();
        var prices = _pricing.Linked(_plan, candidates, _cancel);
        var choice = windows.SelectMany(w => w.Chosen).ToItems();
        var price = prices.Whole(choice);
        var bound = Math.Min(price, windows.Sum(w => w.Bound));
        return (prices, new Outcome.Found(choice, price, bound, 1, windows.SelectMany(w => w.Outcomes).ToItems(), windows.SelectMany(w => w.Lifted).ToItems())
        {
            WasCutShort = _wasCutShort,
        });
    }
}
