using Revoicer.Music;

namespace Revoicer.Comparisons;

/// <summary>Under what a sheet was drafted for a comparison.</summary>
/// <param name="Tower">The tower's name.</param>
/// <param name="Sound">The name of the sound.</param>
/// <param name="Semitones">How many semitones higher than written the sheet is played.</param>
/// <param name="Key">The key that the player then reads; null where the sheet names none.</param>
/// <param name="Layout">The layout asked for, "above", "below" or "best"; null where the sheet has no tune.</param>
public sealed record Setting(string Tower, string Sound, int Semitones, KeySignature? Key, string? Layout)
{
    /// <summary>"Bb major (+3)", "+3" where the sheet names no key.</summary>
    public string KeyName => Key is { } key ? $"{key} ({Signed})" : Signed;

    /// <summary>The semitones as --key takes them: "+3", "-2"; "0" for the written key.</summary>
    public string Signed => FormattableString.Invariant($"{Semitones:+0;-0;0}");
}
