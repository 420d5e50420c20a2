using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>A piece as it is played on a tower: what every report of it begins with.</summary>
public interface IPlayedPiece
{
    /// <summary>The title.</summary>
    string Title { get; }

    /// <summary>The instrument.</summary>
    TowerSummary Tower { get; }

    /// <summary>The key the player reads; null where none is named.</summary>
    KeySignature? WrittenKey { get; }

    /// <summary>The key heard from the tower; null where none is named.</summary>
    KeySignature? SoundingKey { get; }

    /// <summary>The speeds, by place in the piece as heard.</summary>
    TempoMap Tempi { get; }

    /// <summary>Whether neither the file nor the player named a tempo.</summary>
    bool TempoIsAssumed { get; }

    /// <summary>The bars as heard, in order; at least one.</summary>
    Items<ArrangedBar> Bars { get; }

    /// <summary>How much later than its tempo map the piece runs, so that a roll before the first beat has room.</summary>
    Seconds Shift { get; }

    /// <summary>All strokes in order of time, then of note.</summary>
    Items<Stroke> Strokes { get; }
}
