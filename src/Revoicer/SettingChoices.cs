using Revoicer.Bells;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer;

/// <summary>What a comparison combines; every list has at least one entry.</summary>
/// <param name="Towers">The towers.</param>
/// <param name="Sounds">The sounds.</param>
/// <param name="Layouts">Where the tune may lie; not looked at without a tune.</param>
/// <param name="Keys">The keys in semitones from the written one, rising.</param>
public sealed record SettingChoices(Items<Tower> Towers, Items<Sound> Sounds, Items<LayoutWish> Layouts, Items<int> Keys)
{
    /// <summary>How many drafts a sheet with a tune comes to.</summary>
    public int Count => Towers.Count * Sounds.Count * Layouts.Count * Keys.Count;
}
