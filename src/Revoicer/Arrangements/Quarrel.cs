using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>One of the things that make up the clash of a chord.</summary>
/// <param name="Share">Its share of the chord's whole clash, 0..1.</param>
/// <param name="Lasts">
/// How long it is to be heard, above -20 dB of the stroke that came later, from that stroke or the start of the chord's own
/// time on, whichever comes last; 0 where it has fallen below already.
/// </param>
public abstract record Quarrel(double Share, Seconds Lasts);

/// <summary>A pair of partials of two bells that beat against each other.</summary>
/// <param name="Lower">The bell of the lower partial.</param>
/// <param name="LowerPartial">Its partial's name.</param>
/// <param name="LowerFrequency">Its frequency.</param>
/// <param name="Upper">The bell of the higher partial.</param>
/// <param name="UpperPartial">Its partial's name.</param>
/// <param name="UpperFrequency">Its frequency.</param>
/// <param name="Share">Their share of the clash.</param>
/// <param name="Lasts">How long both are to be heard.</param>
public sealed record PairQuarrel(
    WrittenNote Lower,
    string LowerPartial,
    Hertz LowerFrequency,
    WrittenNote Upper,
    string UpperPartial,
    Hertz UpperFrequency,
    double Share,
    Seconds Lasts) : Quarrel(Share, Lasts);

/// <summary>A partial that sounds a semitone beside a tone of the chord.</summary>
/// <param name="Bell">Its bell.</param>
/// <param name="Partial">Its name.</param>
/// <param name="Frequency">Its frequency.</param>
/// <param name="Sounds">What it sounds, as a written pitch class.</param>
/// <param name="Beside">The chord's tone, as a written pitch class.</param>
/// <param name="Share">Its share of the clash.</param>
/// <param name="Lasts">How long it is to be heard.</param>
public sealed record ChordQuarrel(
    WrittenNote Bell,
    string Partial,
    Hertz Frequency,
    PitchClass Sounds,
    PitchClass Beside,
    double Share,
    Seconds Lasts) : Quarrel(Share, Lasts);
