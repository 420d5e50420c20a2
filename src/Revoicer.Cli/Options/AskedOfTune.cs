using Revoicer.LeadSheets;

namespace Revoicer.Cli.Options;

/// <summary>Options that have no meaning where a sheet has no tune.</summary>
internal static class AskedOfTune
{
    /// <summary>Why what is asked of the tune cannot be had, in a sentence; null where it can.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="layouts">Where the tune may lie.</param>
    /// <param name="octave">In which octave it is to lie; null where nothing is asked.</param>
    public static string? Obstacle(LeadSheet sheet, IEnumerable<LayoutWish> layouts, int? octave) => sheet.HasTune ? null
        : layouts.Any(layout => layout != LayoutWish.Above)
            ? "there is no tune on this sheet, so --layout has nothing to lay anywhere; leave it out, or give a sheet with a tune (an .abc file)"
        : octave is not null
            ? "there is no tune on this sheet, so --octave has nothing to move; leave it out, or give a sheet with a tune (an .abc file)"
        : null;
}
