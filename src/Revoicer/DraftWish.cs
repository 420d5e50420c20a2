using Revoicer.LeadSheets.Wishes;
using Revoicer.Music;
using Revoicer.Solving;

namespace Revoicer;

/// <summary>What a player asks of a draft beside sheet, tower and sound.</summary>
/// <param name="Tempo">The player's tempo; null for the sheet's own.</param>
/// <param name="EaseTune">Whether notes of the tune that come sooner than their bell recovers are left out.</param>
public sealed record DraftWish(Tempo? Tempo = null, bool EaseTune = false)
{
    /// <summary>What may be spent on showing how good the answer is.</summary>
    public ProofEffort Effort { get; init; } = ProofEffort.Quick;

    /// <summary>Where the tune is to lie; without a tune it does not matter.</summary>
    public LayoutWish Layout { get; init; } = LayoutWish.Above;

    /// <summary>By how many octaves higher than written the tune is to lie, -2 to 2; null for the octave that is cheapest. Without a tune it does not matter.</summary>
    public int? Octave { get; init; }

    /// <summary>Whether the sheet as a plain hand would take it is to be made besides.</summary>
    public bool WithPlainHand { get; init; }

    /// <summary>Nothing beside.</summary>
    public static DraftWish None { get; } = new();

    /// <summary>What is asked of single chords and passages.</summary>
    public PlayerWishes Wishes { get; init; } = PlayerWishes.None;

    /// <summary>Which other answer is asked for: 0 for the first one, 1 for the next that differs from it, ...</summary>
    public int Another { get; init; }

    /// <summary>What stands there already, where music is voiced anew; null for a sheet.</summary>
    public OriginalNotes? Original { get; init; }

    /// <summary>Whether what is repeated is voiced otherwise from the second time on.</summary>
    public bool VaryRepeats { get; init; }
}
