using Revoicer.Text;

namespace Revoicer.LeadSheets;

/// <summary>The repeat signs at one bar.</summary>
/// <param name="Where">Where the signs stand.</param>
/// <param name="Opens">Whether a repeat begins before the bar.</param>
/// <param name="Closes">Whether the repeat ends after the bar.</param>
/// <param name="Ending">1 or 2 where the first or second ending begins before the bar, else 0.</param>
internal sealed record RepeatMarks(Place Where, bool Opens, bool Closes, int Ending);
