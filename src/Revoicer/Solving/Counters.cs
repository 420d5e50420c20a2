using Google.OrTools.Sat;

namespace Revoicer.Solving;

/// <summary>
/// Counts over the slots of a phrase, as a small number that a dynamic programme carries along: a state has one digit a
/// rule, each from 0 to that rule's largest most.
/// </summary>
internal sealed class Counters
{
    private readonly int[] _phraseOfSlot;
    private readonly Counter[] _counters;
    private readonly int[] _place;

    public Counters(int[] phraseOfSlot, IEnumerable<Counter> counters)
    {
        _phraseOfSlot = phraseOfSlot;
        _counters = [.. counters];
        _place = new int[_counters.Length];
        States = 1;
        for (var r = 0; r < _counters.Length; r++)
        {
            _place[r] = States;
            States *= _counters[r].Most.Max() + 1;
        }
    }

    /// <summary>How many states there are; state 0 has counted nothing.</summary>
    public int States { get; }

    /// <summary>The single counts.</summary>
    public IReadOnlyList<Counter> All => _counters;

    /// <summary>Whether counting starts anew at a slot.</summary>
    public bool StartsPhrase(int slot) => slot == 0 || _phraseOfSlot[slot] != _phraseOfSlot[slot - 1];

    /// <summary>The counts over some slots in a row that begin and end with a phrase, numbered from 0.</summary>
    public Counters Window(int from, int count) => new(
        _phraseOfSlot[from..(from + count)], _counters.Select(c => c with { Counts = c.Counts[from..(from + count)] }));

    /// <summary>The state in which a slot is entered from one of the slot before: a new phrase counts anew.</summary>
    public int Before(int slot, int state) => StartsPhrase(slot) ? 0 : state;

    /// <summary>The state after a candidate; -1 where a most would be exceeded.</summary>
    public int After(int state, int slot, int candidate)
    {
        var next = state;
        for (var r = 0; r < _counters.Length; r++)
        {
            var counter = _counters[r];
            if (counter.Counts[slot][candidate] is > 0 and var more)
            {
                var counted = state / _place[r] % (counter.Most.Max() + 1);
                if (counted + more > counter.Most[_phraseOfSlot[slot]])
                {
                    return -1;
                }

                next += more * _place[r];
            }
        }

        return next;
    }

    /// <summary>States every count to a constraint model.</summary>
    /// <param name="model">The model.</param>
    /// <param name="chosen">For each slot the candidates it chooses from, each with its literal.</param>
    public void AddTo(CpModel model, ChosenLiteral[][] chosen)
    {
        foreach (var counter in _counters)
        {
            counter.AddTo(model, chosen, _phraseOfSlot);
        }
    }

    /// <summary>Whether a whole choice keeps every most.</summary>
    public bool AreKept(IReadOnlyList<int> choice) => _counters.All(counter => IsKept(counter, choice));

    /// <summary>Whether a whole choice keeps the most of one of the counts.</summary>
    public bool IsKept(Counter counter, IReadOnlyList<int> choice) => Enumerable.Range(0, counter.Most.Length)
        .All(phrase => Count(counter, choice, phrase) <= counter.Most[phrase]);

    /// <summary>The counts without some of them.</summary>
    public Counters Without(IReadOnlySet<Counter> leftOut) => leftOut.Count == 0 ? this : new Counters(_phraseOfSlot, _counters.Where(c => !leftOut.Contains(c)));

    /// <summary>Whether a choice that keeps every most still does with another candidate in one slot.</summary>
    public bool AllowsChange(IReadOnlyList<int> choice, int slot, int candidate) =>
        _counters.All(counter => AllowsChange(counter, choice, slot, candidate));

    /// <summary>The same for one of the counts.</summary>
    public bool AllowsChange(Counter counter, IReadOnlyList<int> choice, int slot, int candidate)
    {
        var more = counter.Counts[slot][candidate] - counter.Counts[slot][choice[slot]];
        return more <= 0 || Count(counter, choice, _phraseOfSlot[slot]) + more <= counter.Most[_phraseOfSlot[slot]];
    }

    private int Count(Counter counter, IReadOnlyList<int> choice, int phrase)
    {
        var count = 0;
        for (var slot = 0; slot < _phraseOfSlot.Length; slot++)
        {
            count += _phraseOfSlot[slot] == phrase ? counter.Counts[slot][choice[slot]] : 0;
        }

        return count;
    }
}
