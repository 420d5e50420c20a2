namespace Revoicer.Arrangements;

/// <summary>New chords on strong beats, as heard, and how many of them have a bass bell.</summary>
/// <param name="WithBass">How many of those that are long enough have one.</param>
/// <param name="LongEnough">How many last 0.8 s or more: only these are asked for a bass bell.</param>
/// <param name="All">How many there are in all, quick ones included.</param>
public sealed record StrongBeats(int WithBass, int LongEnough, int All)
{
    /// <summary>None at all.</summary>
    public static StrongBeats None { get; } = new(0, 0, 0);

    /// <summary>The share of the long enough ones that have a bass bell, 0..1; 1 where there are none.</summary>
    public double Share => LongEnough == 0 ? 1 : WithBass / (double)LongEnough;
}
