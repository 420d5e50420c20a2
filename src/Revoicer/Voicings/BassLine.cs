using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>A bass that moves with the tune, as the feet play it.</summary>
/// <param name="Strokes">Its strokes in order of time, the first with the slot; at least two.</param>
/// <param name="LaterTones">The tones of the chord to which it moves, each once, none the first.</param>
internal sealed record BassLine(Items<SlotStroke> Strokes, Items<WrittenNote> LaterTones)
{
    /// <summary>The first pedal, which is the bass of the chord.</summary>
    public WrittenNote Bass => Strokes[0].Note;

    /// <summary>The highest pedal.</summary>
    public WrittenNote Highest => Strokes.Max(s => s.Note);
}
