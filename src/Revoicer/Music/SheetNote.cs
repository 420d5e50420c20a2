namespace Revoicer.Music;

/// <summary>What a sheet writes for a note of its tune, beside the key that it stands for.</summary>
/// <param name="Name">Its spelled name.</param>
/// <param name="Length">How long it lasts on paper, tied notes included; positive.</param>
public readonly record struct SheetNote(NoteName Name, Beats Length);
