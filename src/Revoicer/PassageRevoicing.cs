using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer;

/// <summary>Voices music anew that exists in full: its tune, its rhythm and its chords stay, the rest is chosen.</summary>
public sealed class PassageRevoicing
{
    private readonly Passage _passage;
    private readonly PassageTune _tune;
    private readonly FoundHarmony _harmony;

    private PassageRevoicing(Passage passage, PassageTune tune)
    {
        (_passage, _tune, _harmony) = (passage, tune, HarmonyFinding.Of(passage));
        Sheet = _harmony.Sheet with { Bars = _harmony.Sheet.Bars.Zip(tune.Sheet.Bars, (bar, own) => bar with { Notes = own.Notes }).ToItems() };
    }

    /// <summary>The tune with the chords over it: what a draft is made of.</summary>
    public LeadSheet Sheet { get; }

    /// <summary>Finds tune and chords of a passage; null where no voice is called as asked.</summary>
    /// <param name="passage">The passage, in the key in which it is to be played.</param>
    /// <param name="voice">The voice that has the tune; null to find it.</param>
    public static PassageRevoicing? Of(Passage passage, string? voice) =>
        PassageTune.Of(passage, voice) is { } tune ? new PassageRevoicing(passage, tune) : null;

    /// <summary>What is asked of the draft besides: to stay as close to the notes under the tune.</summary>
    /// <param name="wish">What the player asks for.</param>
    /// <param name="stayClose">How close, 0 (what was there stays where it is the best) to 1.</param>
    public DraftWish Close(DraftWish wish, double stayClose) => wish with { Original = new OriginalNotes(_tune.Rest, stayClose) };

    /// <summary>What was made, with what of the passage has no place in it: notes under the tune where no chord stands.</summary>
    /// <param name="made">The draft of <see cref="Sheet"/>.</param>
    public Arrangement Told(Arrangement made)
    {
        var without = _tune.Rest
            .Where(n => !made.Choices.Any(c => n.Start >= c.Start && n.Start < c.Start + c.Length))
            .GroupBy(n => Sheet.Bars[n.WrittenBar].Number)
            .Select(bar => string.Create(
                CultureInfo.InvariantCulture,
                $"{(bar.Key == 0 ? "the pickup" : $"bar {bar.Key}")}: what stood under the tune where there is no chord is left out"));
        return made with { Totals = made.Totals with { LeftOut = [.. made.Totals.LeftOut, .. without] } };
    }

    /// <summary>What was made beside what there was.</summary>
    /// <param name="made">The draft of <see cref="Sheet"/>.</param>
    /// <param name="tower">The tower it was made for.</param>
    /// <param name="sound">The sound it was made in.</param>
    /// <param name="wish">What was asked of it.</param>
    public Revoiced Beside(Arrangement made, Tower tower, Sound sound, DraftWish wish) => new(
        Auditing.Of(_passage, _harmony.Sheet, tower, sound, wish.Tempo, _tune),
        made,
        Auditing.Of(made, tower, sound),
        _tune.Voice,
        _harmony,
        wish.Original?.StayClose ?? 0);
}
