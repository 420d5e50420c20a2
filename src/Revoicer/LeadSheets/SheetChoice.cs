namespace Revoicer.LeadSheets;

/// <summary>What of an ABC file is to be read.</summary>
/// <param name="Piece">
/// The number behind "X:" of the tune; null for the first tune of the file. Where two tunes bear it, the first is read.
/// </param>
/// <param name="Voice">The name behind "V:" of the voice that has the tune; null for the first voice.</param>
public sealed record SheetChoice(int? Piece = null, string? Voice = null)
{
    /// <summary>The first voice of the first tune.</summary>
    public static SheetChoice First { get; } = new();
}
