using Revoicer.Cli.Options;
using Revoicer.LeadSheets;

namespace Revoicer.Cli.Comparisons;

/// <summary>What was meant by a compare command.</summary>
/// <param name="Sheet">The sheet's file, or a folder of sheets.</param>
/// <param name="Choice">Which tune and voice of the file.</param>
/// <param name="Towers">Names or files of towers; none for the default.</param>
/// <param name="Sounds">Names or files of sounds; none for all that ship.</param>
/// <param name="Layouts">Where the tune may lie; none for above.</param>
/// <param name="Keys">The keys.</param>
internal sealed record CompareRequest(
    string Sheet, SheetChoice Choice, IReadOnlyList<string> Towers, IReadOnlyList<string> Sounds, IReadOnlyList<LayoutWish> Layouts, KeyRange Keys)
{
    /// <summary>Beats of the metre a minute; null for the sheet's tempo.</summary>
    public double? PerMinute { get; init; }

    /// <summary>The file of the player's wishes; null for none.</summary>
    public string? Wishes { get; init; }

    /// <summary>Whether the chords that differ are told.</summary>
    public bool Chords { get; init; }

    /// <summary>The bar of which every setting is told; null for none.</summary>
    public int? Bar { get; init; }

    /// <summary>Whether JSON is printed.</summary>
    public bool AsJson { get; init; }

    /// <summary>Whether the plain hand is put beside the drafts and written.</summary>
    public bool Plain { get; init; }

    /// <summary>The name of what is written; null for the sheet's name in this folder.</summary>
    public string? Out { get; init; }

    /// <summary>Whether files that exist may be replaced.</summary>
    public bool Force { get; init; }
}
