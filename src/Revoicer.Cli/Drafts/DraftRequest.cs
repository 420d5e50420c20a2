using Revoicer.Cli.Options;
using Revoicer.LeadSheets;
using Revoicer.Values;

namespace Revoicer.Cli.Drafts;

/// <summary>What was meant by a draft command.</summary>
/// <param name="Sheet">The sheet's file, or a folder of sheets.</param>
/// <param name="Tower">A shipped tower's name, or a file.</param>
/// <param name="Sound">A shipped sound's name, or a file.</param>
/// <param name="Out">The name of the results without ending; null for the sheet's name in this folder.</param>
/// <param name="PerMinute">Beats of the metre a minute; null for the sheet's tempo.</param>
/// <param name="Key">The key asked for; null for the sheet's.</param>
/// <param name="EaseTune">Whether notes of the tune that a bell cannot repeat so soon are left out.</param>
/// <param name="Prove">Whether to take as long as a proof needs.</param>
/// <param name="TimeLimit">After so many seconds the best found so far is taken; null for no limit.</param>
/// <param name="Choice">Which tune and voice of an ABC file.</param>
/// <param name="Force">Whether files that exist may be replaced.</param>
/// <param name="Layout">Where the tune is to lie.</param>
internal sealed record DraftRequest(
    string Sheet, SheetChoice Choice, string Tower, string Sound, string? Out, double? PerMinute, KeyWish? Key, bool EaseTune,
    bool Prove, double? TimeLimit, bool Force, LayoutWish Layout)
{
    /// <summary>The time limit from now on; to be asked for where the command begins, as it holds for all that the command does.</summary>
    public Deadline Deadline() => TimeLimit is { } seconds ? Values.Deadline.After(TimeProvider.System, new Seconds(seconds)) : Values.Deadline.None;

    /// <summary>The file of the player's wishes; null for none.</summary>
    public string? Wishes { get; init; }

    /// <summary>By how many octaves higher than written the tune is to lie; null for the cheapest.</summary>
    public int? Octave { get; init; }

    /// <summary>Which other answer; 0 for the first.</summary>
    public int Another { get; init; }

    /// <summary>Files that are never written to, beside those of this draft.</summary>
    public IReadOnlyList<string> OtherInputs { get; init; } = [];

    /// <summary>Whether what is repeated may differ from the second time on.</summary>
    public bool VaryRepeats { get; init; }
}
