using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer;

/// <summary>Voices music anew that exists in full: its tune, its rhythm and its chords stay, the rest is chosen.</summary>
public sealed class PassageRevoicing
{
    private readonly Passage _passage;
    private readonly PassageTune _tune;
    private readonly FoundHarmony _harmony;

    private PassageRevoicing(Passage passage, PassageTune tune)
    {
        // A tune alone that has no chords is not harmonised.
        (_passage, _tune, _harmony) = (passage, tune, tune.Rest.Count == 0 ? new FoundHarmony(passage.Sheet, [], 0) : HarmonyFinding.Of(passage));
        Sheet = _harmony.Sheet with { Bars = WrittenBass.Over(_harmony.Sheet, passage, tune).Bars.Zip(tune.Sheet.Bars, (bar, own) => bar with { Notes = own.Notes }).ToItems() };
    }

    /// <summary>The tune with the chords over it: what a draft is made of.</summary>
    public LeadSheet Sheet { get; }

    /// <summary>Whether it is a tune alone, without chord symbols and without other notes from which chords could be found.</summary>
    public bool IsBareTune => _tune.Rest.Count == 0 && !_passage.Sheet.HasChords;

    /// <summary>Finds tune and chords of a passage; null where no voice is called as asked.</summary>
    /// <param name="passage">The passage, in the key in which it is to be played.</param>
    /// <param name="voice">The voice that has the tune; null to find it.</param>
    public static PassageRevoicing? Of(Passage passage, string? voice) =>
        PassageTune.Of(passage, voice) is { } tune ? new PassageRevoicing(passage, tune) : null;

    /// <summary>What is asked of the draft besides: to stay as close to the notes under the tune.</summary>
    /// <param name="wish">What the player asks for.</param>
    /// <param name="stayClose">How close, 0 (what was there stays where it is the best) to 1.</param>
    public DraftWish Close(DraftWish wish, double stayClose) => wish with { Original = new OriginalNotes(_tune.Rest, stayClose) };

    /// <summary>
    /// What was made, with what of the passage has no place in it: notes under the tune where no chord stands, and those that
    /// are no notes any more once they are moved with the tune. All others are what stood in the place of a chord, or
    /// are struck by the tune as well.
    /// </summary>
    /// <param name="made">The draft of <see cref="Sheet"/>.</param>
    public Arrangement Told(Arrangement made)
    {
        var octaves = made.TuneOctaves ?? 0;
        var struck = made.Strokes.Where(s => s.IsTune).Select(s => (s.Beat, (WrittenNote?)s.Note)).ToHashSet();
        HeardNote[] under = [.. _tune.Rest.Where(n => !struck.Contains((n.Start, OriginalNotes.Moved(n.Note, octaves))))];
        var withoutChord = under.Where(n => !HasChord(n)).ToArray();
        var beyond = under.Except(withoutChord).Where(n => OriginalNotes.Moved(n.Note, octaves) is null);
        return made with
        {
            Totals = made.Totals with
            {
                LeftOut =
                [
                    .. made.Totals.LeftOut,
                    .. Sentences(withoutChord, "what stood under the tune where there is no chord is left out"),
                    .. Sentences(beyond, "what would lie beyond all bells once it is moved with the tune is left out"),
                ],
            },
        };

        bool HasChord(HeardNote note) => made.Choices.Any(c => note.Start >= c.Start && note.Start < c.Start + c.Length);
    }

    private IEnumerable<string> Sentences(IEnumerable<HeardNote> notes, string what) => notes
        .GroupBy(n => Sheet.Bars[n.WrittenBar].Number)
        .Select(bar => string.Create(CultureInfo.InvariantCulture, $"{(bar.Key == 0 ? "the pickup" : $"bar {bar.Key}")}: {what}"));

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
        wish.Original?.StayClose ?? 0)
    {
        Voices = made.Choices.Aggregate(KeptVoices.None, (sum, choice) => sum + VoicesOf(made, choice)),
    };

    private KeptVoices VoicesOf(Arrangement made, Choice choice)
    {
        if (choice.Former is not { Notes.Count: > 0 })
        {
            return KeptVoices.None;
        }

        var isLong = made.Tempi.At(choice.Start + choice.Length) - made.Tempi.At(choice.Start) >= Slot.Quick;
        var hasBass = choice.Strokes.Any(s => s.IsPedal);
        var asksInner = isLong && OriginalNotes.VoicesIn(_tune.Rest, choice.Start, choice.Length, Sheet.HasTune) >= OriginalChord.WithInnerVoice;
        var hasInner = choice.Strokes.Select(s => s.Note).Distinct().Count() > (hasBass ? 1 : 0);
        return new KeptVoices(Count(isLong), Count(isLong && hasBass), Count(asksInner), Count(asksInner && hasInner), Count(choice.Strokes.Count == 0));

        static int Count(bool isSo) => isSo ? 1 : 0;
    }
}
