using Revoicer.Chords;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>A kind of chord that is looked for.</summary>
internal sealed class ChordTemplate
{
    private readonly (int Semitones, int Bit, long Missing)[] _tones;
    private readonly long[] _bass = new long[12];

    private ChordTemplate(string suffix, long rarity)
    {
        (Suffix, Rarity) = (suffix, rarity);
        var tones = SymbolParser.Parse("C" + suffix).Symbol!.Tones;
        _tones = [.. tones.Select(t => (t.PitchClass.Value, 1 << t.PitchClass.Value, MissingPrice(t)))];
        Mask = _tones.Sum(t => t.Bit);
        Array.Fill(_bass, ChordPrices.BassForeign);
        foreach (var tone in tones)
        {
            _bass[tone.PitchClass.Value] = tone.Degree.Number switch { 1 => 0, 3 => ChordPrices.BassThird, _ => ChordPrices.BassOther };
        }
    }

    /// <summary>
    /// The kinds, plain ones first. What each costs beside a triad is an estimate: how seldom it is meant where its tones
    /// sound.
    /// </summary>
    public static Items<ChordTemplate> All { get; } =
    [
        new("", 0), new("m", 0), new("7", 200), new("m7", 250), new("maj7", 400), new("dim", 200), new("m7b5", 250), new("dim7", 250),
        new("6", 600), new("m6", 300), new("sus4", 400), new("7sus4", 500), new("sus2", 600), new("+", 500), new("add9", 1300),
        new("9", 1300), new("7b9", 600), new("mMaj7", 700), new("5", 200),
    ];

    /// <summary>What is written behind the root.</summary>
    public string Suffix { get; }

    /// <summary>What it costs beside a triad.</summary>
    public long Rarity { get; }

    /// <summary>Whether its name has a diminished fifth: such roots are leading notes, which are spelled upward.</summary>
    public bool IsDiminished => Suffix is "dim" or "dim7" or "m7b5";

    /// <summary>Its tones above C, bit k for k semitones.</summary>
    public int Mask { get; }

    /// <summary>What its tones that do not sound cost.</summary>
    /// <param name="sounding">The tones that do, bit k for k semitones above the root.</param>
    public long Missing(int sounding)
    {
        var price = 0L;
        foreach (var (_, bit, missing) in _tones)
        {
            price += (sounding & bit) == 0 ? missing : 0;
        }

        return price;
    }

    /// <summary>What the bass costs, so many semitones above the root.</summary>
    public long Bass(int aboveRoot) => _bass[aboveRoot];

    /// <summary>For how long tones of the chord sound.</summary>
    /// <param name="times">By semitones above the root.</param>
    public long Inside(ReadOnlySpan<long> times)
    {
        var inside = 0L;
        foreach (var (semitones, _, _) in _tones)
        {
            inside += times[semitones];
        }

        return inside;
    }

    /// <summary>For how long tones of the chord, but not a perfect fifth, are waited for.</summary>
    /// <param name="waits">How long others sound together without a tone, by semitones above the root.</param>
    public long Waits(ReadOnlySpan<long> waits)
    {
        var all = 0L;
        foreach (var (semitones, _, missing) in _tones)
        {
            all += missing == ChordPrices.NoFifth ? 0 : waits[semitones];
        }

        return all;
    }

    private static long MissingPrice(ChordTone tone) => tone.Degree switch
    {
        { Number: 1 } => ChordPrices.NoRoot,
        { Number: 5, Alteration: 0 } => ChordPrices.NoFifth,
        _ => ChordPrices.NoGuide,
    };
}
