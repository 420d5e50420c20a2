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

    /// <summary>By how many octaves higher than written the tune is to lie; null for the cheapest.</summary>
    public int? Octave { get; init; }

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

    /// <summary>Whether clash and carry are traded off.</summary>
    public bool TradeOff { get; init; }

    /// <summary>The folder into which the sounds of a trade-off are written; null for none.</summary>
    public string? SoundFolder { get; init; }

    /// <summary>Whether pictures are drawn.</summary>
    public bool Pictures { get; init; }

    /// <summary>The name of what is written; null for the sheet's name in this folder.</summary>
    public string? Out { get; init; }

    /// <summary>Whether files that exist may be replaced.</summary>
    public bool Force { get; init; }

    /// <summary>What does not go together, in a sentence with a remedy; null where all does.</summary>
    public string? Contradiction => this switch
    {
        { AsJson: true } when Chords || Bar is not null => "--json prints the figures alone; leave out --chords and --bar, or --json",
        { TradeOff: true } when Chords || Plain || Bar is not null => "--trade-off says what each of its drafts gives up; leave out --chords, --bar and --plain, or --trade-off",
        { SoundFolder: not null, TradeOff: false } => "--write-sounds writes the sounds of a trade-off; add --trade-off, or leave it out",
        { Out: not null, Plain: false, Pictures: false } => "--out names the files that --plain and --pictures write; add one of these, or leave it out",
        _ => null,
    };
}
