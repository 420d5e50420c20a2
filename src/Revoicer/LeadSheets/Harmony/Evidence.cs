using System.Numerics;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>What sounds in some moments of one bar, put together moment by moment.</summary>
/// <param name="highestBass">A lowest note above this MIDI number is no bass.</param>
internal sealed class Evidence(int highestBass)
{
    // What lies further above the bass is the chord over it, struck after it.
    private const int Fifth = 7;

    // By pitch class, twice over, so that from every root on all twelve stand in a row.
    private readonly long[] _times = new long[2 * ChordGuess.Tones];
    private readonly long[] _waits = new long[2 * ChordGuess.Tones];
    private long _all;
    private long _moves;
    private int _lowest = int.MaxValue;

    /// <summary>The pitch classes that sound, bit k for k.</summary>
    public int Sounding { get; private set; }

    /// <summary>Whether the lowest note can be heard as a bass: it lies low enough, and something sounds above it.</summary>
    public bool HasBass { get; private set; }

    /// <summary>The lowest pitch class, heard as a bass or not; meaningless in silence.</summary>
    public int Lowest => _lowest % ChordGuess.Tones;

    /// <summary>Takes the next moment. The bass is the lowest note up to the first moment at which two notes sound together.</summary>
    public void Add(Moment moment)
    {
        Sounding |= moment.Sounding;
        for (var k = 0; k < ChordGuess.Tones; k++)
        {
            _all += moment.Times[k];
            _times[k] = _times[k + ChordGuess.Tones] += moment.Times[k];
            _waits[k] = _waits[k + ChordGuess.Tones] += moment.IsTogether && (Sounding & (1 << k)) == 0 ? moment.Length : 0;
        }

        if (!HasBass)
        {
            _lowest = Math.Min(_lowest, moment.Lowest);
            HasBass = moment.IsTogether && _lowest <= highestBass;
        }
        else if (moment.IsOnBeat && moment.Lowest <= _lowest + Fifth && moment.Lowest % ChordGuess.Tones != Lowest)
        {
            _moves += ChordPrices.BassMoves;
        }
    }

    /// <summary>How many tones of a kind of chord sound.</summary>
    public int TonesOf(ChordTemplate kind, int root) => BitOperations.PopCount((uint)(FromRoot(root) & kind.Mask));

    /// <summary>What a chord costs for as long as it lasts: the tones outside it, and its own while they are waited for.</summary>
    public long Lasting(ChordTemplate kind, ChordGuess chord)
    {
        var isForeignBass = (kind.Mask & (1 << Above(chord.Bass, chord.Root))) == 0;
        var foreign = _all - kind.Inside(AboveRoot(_times)) - (isForeignBass ? _times[chord.Bass] : 0);
        return (foreign * ChordPrices.Foreign / 1000) + (long)(kind.Waits(AboveRoot(_waits)) * ChordPrices.Late) + _moves;

        ReadOnlySpan<long> AboveRoot(long[] tones) => tones.AsSpan(chord.Root, ChordGuess.Tones);
    }

    /// <summary>What a chord costs for its tones that do not sound.</summary>
    public long Missing(ChordTemplate kind, int root) => kind.Missing(FromRoot(root));

    /// <summary>The same where the root stays: it is not missed as long as no other bass is heard.</summary>
    public long MissingOnSameRoot(ChordTemplate kind, int root) => kind.Missing(FromRoot(root) | (HasBass ? 0 : 1));

    /// <summary>What a chord's bass costs.</summary>
    public long Bass(ChordTemplate kind, ChordGuess chord) => HasBass ? kind.Bass(Above(chord.Bass, chord.Root)) : 0;

    private static int Above(int tone, int root) => (tone - root + ChordGuess.Tones) % ChordGuess.Tones;

    // The tones that sound, bit k for k semitones above the root.
    private int FromRoot(int root) => ((Sounding >> root) | (Sounding << (ChordGuess.Tones - root))) & 0xFFF;
}
