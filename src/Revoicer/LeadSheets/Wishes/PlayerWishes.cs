using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Wishes;

/// <summary>What a player asks of the draft of one sheet, place by place.</summary>
/// <param name="All">The wishes, in the order of the file.</param>
/// <param name="Phrases">Where phrases begin, in the order of the file; none where the program is to find them.</param>
public sealed record PlayerWishes(Items<Wish> All, Items<PhraseStart> Phrases)
{
    /// <summary>Nothing asked.</summary>
    public static PlayerWishes None { get; } = new([], []);

    /// <summary>How many things are asked; a bar named twice as the beginning of a phrase is one.</summary>
    public int Count => All.Count + Phrases.Select(p => p.Bar).Distinct().Count();
}

/// <summary>A bar with which a phrase begins.</summary>
/// <param name="Bar">The number of the written bar.</param>
/// <param name="Where">Where the wish stands in the file.</param>
public sealed record PhraseStart(int Bar, Place Where);
