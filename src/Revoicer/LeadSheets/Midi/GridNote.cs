namespace Revoicer.LeadSheets.Midi;

/// <summary>A note of one voice on the grid.</summary>
/// <param name="Pitch">Its number, 0..127, middle C = 60.</param>
/// <param name="Start">Where it begins.</param>
/// <param name="End">Where it ends, later.</param>
/// <param name="IsRolled">Whether it belongs to a roll.</param>
internal sealed record GridNote(int Pitch, GridPlace Start, GridPlace End, bool IsRolled);
