using System.Globalization;
using Revoicer.Playing;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>
/// A phrase has no more strokes on heavy bells (below written middle C) than a player can give in its time; those of the
/// tune, which is given, are taken off first. It holds for the phrase on the whole: how the level of fatigue rises within it
/// is told, not ruled (<see cref="Fatigue"/>).
/// </summary>
/// <param name="most">Strokes in 10 s, more of which are too many: heavy_strokes_in_10_s of playing-limits.tsv, hard half, common practice.</param>
public sealed class HeavyStrokes(double most) : PhraseRule
{
    private const int MiddleC = 60;
    private const double TenSeconds = 10;

    /// <inheritdoc/>
    public override string Words => string.Create(
        CultureInfo.InvariantCulture, $"hands and feet strike at most {most:0.#} heavy bells in 10 s, taken over a phrase (limit heavy_strokes_in_10_s)");

    /// <summary>Chords that stand long enough to be heard leave time enough.</summary>
    public override bool IsSeldom => true;

    /// <inheritdoc/>
    public override int Count(Slot slot, Candidate candidate) => candidate.Strokes.Count(s => s.Note.Midi < MiddleC);

    /// <inheritdoc/>
    public override int Most(IEnumerable<Slot> phrase)
    {
        var (seconds, ofTune) = (0.0, 0);
        foreach (var slot in phrase)
        {
            seconds += slot.Duration.Value;
            ofTune += slot.TuneHere.Count(s => s.Note.Midi < MiddleC);
        }

        return Math.Max(0, (int)Math.Floor((most * seconds / TenSeconds) + 1e-9) - ofTune);
    }
}
