using Revoicer.Chords;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Prices;

/// <summary>
/// What it costs to go from the tones that the hands take in one slot to those of the next: how far they move, tones that do
/// not go where they lead, how their number changes, and, where there is no tune, leaps and repeats of the highest, which is heard as one.
/// </summary>
internal sealed class UpperLine
{
    private const int Fifth = 7;

    private readonly Sound _sound;
    private readonly IReadOnlyList<int[]> _earlier;
    private readonly IReadOnlyList<int[]> _later;
    private readonly int _forward;
    private readonly int _backward;
    private readonly Tendencies _ahead;
    private readonly Tendencies _back;
    private readonly bool _isOnTop;
    private readonly bool _isOnePhrase;

    // Prices between the sets of tones, worked out when first asked for; one more than they are, so that 0 means not yet. Two
    // threads may do it alike.
    private readonly int[] _known;

    /// <summary>Between two slots that follow each other.</summary>
    /// <param name="sound">The weights.</param>
    /// <param name="earlier">One slot.</param>
    /// <param name="later">The other.</param>
    /// <param name="forward">How often the other follows the one.</param>
    /// <param name="backward">How often the one follows the other.</param>
    public UpperLine(Sound sound, PricedSlot earlier, PricedSlot later, int forward, int backward)
    {
        _sound = sound;
        (_earlier, _later) = (earlier.Uppers, later.Uppers);
        (_forward, _backward) = (forward, backward);
        _ahead = Tendencies.Between(earlier.Slot.Symbol, later.Slot.Symbol);
        _back = Tendencies.Between(later.Slot.Symbol, earlier.Slot.Symbol);
        _isOnTop = earlier.Slot.Tunes.Count == 0 && later.Slot.Tunes.Count == 0;
        _isOnePhrase = earlier.Slot.Phrase == later.Slot.Phrase;
        _known = forward + backward == 0 ? [] : new int[_earlier.Count * _later.Count];
    }

    /// <summary>The price of two sets of tones, by their numbers in their slots.</summary>
    public int Price(int a, int b)
    {
        ref var known = ref _known[(a * _later.Count) + b];
        if (known == 0)
        {
            known = 1 + (int)Terms(a, b).Sum();
        }

        return known - 1;
    }

    /// <summary>The same, term by term.</summary>
    public TermPrices Terms(int a, int b)
    {
        var (from, to) = (_earlier[a], _later[b]);
        var both = _forward + _backward;
        var prices = new TermPrices();
        prices[Term.VoiceLeading] = both * Thousandths.Of(_sound.VoiceLeading * VoiceLeading.Size(from, to));
        prices[Term.NumberOfTones] = _isOnePhrase ? both * Thousandths.Of(_sound.NumberOfTones * Math.Max(0, Math.Abs(from.Length - to.Length) - 1)) : 0;
        prices[Term.TopLine] = _isOnTop && from.Length > 0 && to.Length > 0
            ? both * Thousandths.Of(from[^1] == to[^1] ? _sound.TopAgain : _sound.TopLeap * Math.Max(0, Math.Abs(from[^1] - to[^1]) - Fifth))
            : 0;
        prices[Term.Tendency] = ((_forward * _ahead.Unanswered(from, to)) + (_backward * _back.Unanswered(to, from))) * Thousandths.Of(_sound.Tendency);
        return prices;
    }
}
