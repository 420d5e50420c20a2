using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>All that is to be known of a figure, in one place.</summary>
/// <param name="Figure">The figure.</param>
/// <param name="Name">Its name, in words.</param>
/// <param name="Needs">What a chord has to have before it can be played so, as a clause.</param>
/// <param name="Places">
/// What is struck when, in order of time, for a slot and the number of bells that feet and hands have; null where it does not fit.
/// </param>
/// <param name="Price">What a sound asks for it, in clash units.</param>
internal sealed record FigureRow(
    Figure Figure,
    string Name,
    string Needs,
    Func<FigureSite, IReadOnlyList<PartAt>?> Places,
    Func<Sound, FigureMoment, double> Price)
{
    /// <summary>Whether it comes before the beat, stroke by stroke, as an ornament of the chord struck together.</summary>
    public bool IsRoll { get; init; }

    /// <summary>Whether each hand takes its batons at once.</summary>
    public bool NeedsGrip { get; init; } = true;

    /// <summary>Whether it is a way of playing that a phrase can keep or change; silence is none, nor is what stood there before.</summary>
    public bool IsManner { get; init; } = true;
}

/// <summary>Where a figure is to stand.</summary>
/// <param name="Slot">The slot.</param>
/// <param name="Feet">How many bells the feet have.</param>
/// <param name="Hands">How many bells the hands have.</param>
internal readonly record struct FigureSite(Slot Slot, int Feet, int Hands)
{
    /// <summary>How many bells there are.</summary>
    public int Bells => Feet + Hands;

    /// <summary>Whether feet and hands both have bells.</summary>
    public bool HasBoth => Feet > 0 && Hands > 0;
}

/// <summary>What of a moment in the piece matters to the price of a figure.</summary>
/// <param name="MarksForm">Whether a roll is expected: where a phrase begins, and on the last chord.</param>
/// <param name="WelcomesRoll">Whether a roll is welcome: there, and on long chords of three bells and more.</param>
/// <param name="IsLast">Whether it is the last chord.</param>
internal readonly record struct FigureMoment(bool MarksForm, bool WelcomesRoll, bool IsLast);

/// <summary>A part of a chord.</summary>
internal enum Part
{
    /// <summary>All bells.</summary>
    All,

    /// <summary>What the feet have.</summary>
    Bass,

    /// <summary>What the hands have.</summary>
    Rest,

    /// <summary>One bell, counted from below.</summary>
    One,
}

/// <summary>A part of a chord and when it is struck.</summary>
/// <param name="After">How long after the start of the slot.</param>
/// <param name="Part">The part.</param>
/// <param name="Number">Which bell from below, from 0, where the part is one bell.</param>
internal readonly record struct PartAt(Beats After, Part Part, int Number = 0);
