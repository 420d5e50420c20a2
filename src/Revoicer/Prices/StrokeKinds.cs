using System.Runtime.InteropServices;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>A stroke that candidates of one slot have in common: which bell, which limb, when after the slot's start.</summary>
/// <param name="Bell">The bell's place in the tower.</param>
/// <param name="Limb">What strikes it.</param>
/// <param name="Offset">Microseconds after the start of the slot; negative in the lead of a roll.</param>
internal readonly record struct StrokeKind(int Bell, Limb Limb, long Offset);

/// <summary>
/// The kinds of stroke that occur in a slot, and which of them each candidate has: prices between strokes are worked out
/// once a kind, not once a candidate.
/// </summary>
internal sealed class StrokeKinds
{
    private readonly List<StrokeKind> _kinds = [];
    private readonly List<long> _offsets = [];
    private readonly List<List<int>> _withOffset = [];
    private readonly int[][] _ofCandidate;

    public StrokeKinds(Slot slot, Items<Candidate> candidates, Seconds rollStep, Func<int, int> bellAtMidi)
    {
        var numbers = new Dictionary<SlotStroke, int>();
        var secondsPerQuarter = slot.Duration.Value / slot.Length.Quarters;
        _ofCandidate = new int[candidates.Count][];
        for (var c = 0; c < _ofCandidate.Length; c++)
        {
            var strokes = candidates[c].Strokes.AsSpan();
            var kinds = _ofCandidate[c] = new int[strokes.Length];
            for (var s = 0; s < strokes.Length; s++)
            {
                if (!numbers.TryGetValue(strokes[s], out var kind))
                {
                    kind = numbers.Count;
                    numbers.Add(strokes[s], kind);
                    Add(KindOf(strokes[s]));
                }

                kinds[s] = kind;
            }
        }

        StrokeKind KindOf(SlotStroke stroke)
        {
            var seconds = (stroke.After.Quarters * secondsPerQuarter) - (stroke.LeadSteps * rollStep.Value);
            return new StrokeKind(bellAtMidi(stroke.Note.Midi), stroke.Limb, Microseconds(new Seconds(seconds)));
        }
    }

    public int Count => _kinds.Count;

    /// <summary>The different offsets of the kinds: few, as all candidates share their figures.</summary>
    public IReadOnlyList<long> Offsets => _offsets;

    public StrokeKind this[int kind] => _kinds[kind];

    /// <summary>The kinds of a candidate's strokes, in the order of its strokes.</summary>
    public ReadOnlySpan<int> Of(int candidate) => _ofCandidate[candidate];

    /// <summary>The kinds that have one of the offsets.</summary>
    public ReadOnlySpan<int> WithOffset(int offset) => CollectionsMarshal.AsSpan(_withOffset[offset]);

    public static long Microseconds(Seconds seconds) => (long)Math.Round(seconds.Value * 1e6);

    private void Add(StrokeKind kind)
    {
        var offset = _offsets.IndexOf(kind.Offset);
        if (offset < 0)
        {
            offset = _offsets.Count;
            _offsets.Add(kind.Offset);
            _withOffset.Add([]);
        }

        _withOffset[offset].Add(_kinds.Count);
        _kinds.Add(kind);
    }
}
