using Revoicer.Music;

namespace Revoicer.Tests.Writing.MusicXml;

/// <summary>A stroke as it stands in a score, its place in the piece as heard.</summary>
internal sealed record WalkedStroke(Beats At, int Midi, int Staff, int Voice, string Stem, bool IsRolled, bool IsInParentheses);

/// <summary>A bar as it stands in a score.</summary>
internal sealed record WalkedBar(string Number, bool IsCounted, Beats Length, string Time, IReadOnlyList<WalkedStroke> Strokes, IReadOnlyList<(Beats At, string Symbol)> Chords, IReadOnlyList<(Beats At, double PerMinute)> Tempi)
{
    public bool Opens { get; set; }

    /// <summary>How often a repeat that ends here is heard; 0 where none ends.</summary>
    public int Closes { get; set; }

    public int[] Ending { get; set; } = [];

    public bool EndsEnding { get; set; }
}
