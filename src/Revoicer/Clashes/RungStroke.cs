using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>A stroke of a piece whose clash is added up.</summary>
/// <param name="Bell">Its bell's place in the tower.</param>
/// <param name="At">When it is struck.</param>
/// <param name="Chord">The place of the chord that it belongs to; -1 before the first.</param>
/// <param name="Touch">The factor on its amplitude.</param>
/// <param name="IsTune">Whether it is the tune's.</param>
internal readonly record struct RungStroke(int Bell, Seconds At, int Chord, double Touch, bool IsTune);

/// <summary>A chord and when it reigns.</summary>
/// <param name="Classes">The chord as it sounds.</param>
/// <param name="From">From when on.</param>
/// <param name="To">Until when.</param>
internal readonly record struct ReigningChord(ChordClasses Classes, Seconds From, Seconds To);

/// <summary>A stretch of time whose clash is asked for.</summary>
/// <param name="From">Its start.</param>
/// <param name="To">Its end, later.</param>
/// <param name="Chord">The chord whose own strokes are told from older ones; more than any for a stretch of several chords, all of which count as own.</param>
/// <param name="Reigning">What reigns in it, in any order.</param>
internal sealed record RungWindow(Seconds From, Seconds To, int Chord, IReadOnlyList<ReigningChord> Reigning)
{
    /// <summary>For a stretch in which no chord's strokes are told from others.</summary>
    public const int AllAlike = -2;
}

/// <summary>What clashes in a stretch of time, in clash units.</summary>
internal sealed class RungClash
{
    /// <summary>Among the chord's own strokes, with the chord before, with older ones; the tune with itself left out.</summary>
    public double[] Parts { get; } = new double[3];

    /// <summary>Of those the part that is contradiction.</summary>
    public double Contradiction { get; set; }

    /// <summary>The roughness of the tune with itself.</summary>
    public double TuneRoughness { get; set; }

    /// <summary>The contradiction of the tune's own strokes.</summary>
    public double TuneContradiction { get; set; }

    /// <summary>The tune with itself.</summary>
    public double Tune => TuneRoughness + TuneContradiction;

    /// <summary>All of it.</summary>
    public double Whole => Parts[0] + Parts[1] + Parts[2] + Tune;

    /// <summary>The pairs of partials that make up most of it, and single ones, largest first, each with its share of the whole.</summary>
    public IReadOnlyList<RungPart> Largest { get; set; } = [];
}

/// <summary>A pair of partials of two bells, or one partial against the chord (higher bell -1), with its share of a clash.</summary>
/// <param name="LowerBell">The bell with the lower place in the tower.</param>
/// <param name="Lower">Which of its partials.</param>
/// <param name="HigherBell">The other bell; -1 for a contradiction.</param>
/// <param name="Higher">Which of its partials.</param>
/// <param name="Share">Its share of the whole.</param>
internal readonly record struct RungPart(int LowerBell, int Lower, int HigherBell, int Higher, double Share);
