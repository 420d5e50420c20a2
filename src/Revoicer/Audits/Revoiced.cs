using Revoicer.Arrangements;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>Music that was voiced anew beside what it was.</summary>
/// <param name="Before">What it was like on the tower.</param>
/// <param name="After">What it became.</param>
/// <param name="Now">What that is like, told in the same figures as before.</param>
/// <param name="Tune">How its tune was found, in words.</param>
/// <param name="Harmony">Its chords.</param>
/// <param name="StayClose">How close it was to stay, 0 to 1.</param>
public sealed record Revoiced(AuditReport Before, Arrangement After, AuditReport Now, string Tune, FoundHarmony Harmony, double StayClose)
{
    /// <summary>How many of its voices it has kept.</summary>
    public KeptVoices Voices { get; init; } = KeptVoices.None;

    /// <summary>The chords of which something moved, as heard.</summary>
    public Items<Choice> Moved => After.Choices.Where(c => c.Former is { IsKept: false }).ToItems();
}
