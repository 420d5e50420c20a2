using Revoicer.Cli.Options;

namespace Revoicer.Cli.Audits;

/// <summary>What was meant by an audit command.</summary>
/// <param name="Passage">The music's file.</param>
/// <param name="Tower">A shipped tower's name, or a file.</param>
/// <param name="Sound">A shipped sound's name, or a file.</param>
/// <param name="PerMinute">Beats of the metre a minute; null for the passage's tempo.</param>
/// <param name="Key">The key asked for; null for the passage's.</param>
/// <param name="Piece">Which tune of an ABC file; null for the first.</param>
/// <param name="Voice">The voice whose tune is told apart from the rest; null for none.</param>
/// <param name="Feet">The voice that is written for the feet; null to go by the voices' names.</param>
/// <param name="Sounding">Whether the passage has the pitch that is heard.</param>
/// <param name="Json">Whether the report is printed as JSON.</param>
internal sealed record AuditRequest(
    string Passage, string Tower, string Sound, double? PerMinute, KeyWish? Key, int? Piece, string? Voice, string? Feet, bool Sounding, bool Json);
