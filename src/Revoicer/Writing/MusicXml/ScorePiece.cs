using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>A group of notes in the time of another number of the same value.</summary>
/// <param name="Actual">How many there are.</param>
/// <param name="Normal">In the time of how many.</param>
/// <param name="Type">Of which value.</param>
internal sealed record Tuplet(int Actual, int Normal, string Type);

/// <summary>One written sign of a voice: a note, a chord or a rest, perhaps tied to others of the same stroke.</summary>
/// <param name="Start">Where it begins, from the start of its bar.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Note">What is struck; null for a rest.</param>
/// <param name="Value">The written value; null where none can express the length, or for a rest of a whole bar.</param>
internal sealed record ScorePiece(Beats Start, Beats End, VoiceNote? Note, NoteValue? Value)
{
    /// <summary>The tuplet that it is part of; null outside of any.</summary>
    public Tuplet? Tuplet { get; init; }

    /// <summary>Whether it is the first of its tuplet.</summary>
    public bool BeginsTuplet { get; init; }

    /// <summary>Whether it is the last of its tuplet.</summary>
    public bool EndsTuplet { get; init; }

    /// <summary>Whether a tie comes from before: it is not struck.</summary>
    public bool IsTiedBack { get; init; }

    /// <summary>Whether a tie leads on.</summary>
    public bool IsTiedOn { get; init; }

    /// <summary>Whether it is the rest of a whole bar.</summary>
    public bool IsBarRest { get; init; }

    /// <summary>Its beams from the eighth's inward: "begin", "continue", "end", "forward hook", "backward hook"; none where it has a flag or no tail.</summary>
    public IReadOnlyList<string> Beams { get; init; } = [];
}
