using Revoicer.Cli.Drafts;

namespace Revoicer.Cli.Revoices;

/// <summary>What was meant by a revoice command.</summary>
/// <param name="Draft">What is asked of the new voicing, its sheet the music's file.</param>
/// <param name="Sounding">Whether the music has the pitch that is heard.</param>
/// <param name="StayClose">How close to stay to what is there, 0 to 1.</param>
/// <param name="Feet">The voice that is written for the feet; null to go by the voices' names.</param>
internal sealed record RevoiceRequest(DraftRequest Draft, bool Sounding, double StayClose, string? Feet);
