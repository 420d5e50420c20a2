using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Advice;

/// <summary>Says why the bells that a player wants for a chord cannot be taken, with the limit that forbids it.</summary>
/// <param name="tower">The tower.</param>
/// <param name="slot">The chord.</param>
/// <param name="tune">Where the tune lies; null where there is none.</param>
internal sealed class WishedBells(Tower tower, Slot slot, PlacedTune? tune)
{
    // More bells than the limbs of one player hold at once are not tried out.
    private const int MostTried = 6;

    private static readonly Limb[] Limbs = Enum.GetValues<Limb>();

    /// <summary>What stands against the bells, as a clause; null where it is something else.</summary>
    /// <param name="notes">Bells of the tower and tones of the chord, upward.</param>
    public string? Against(Items<WrittenNote> notes) => TooMany(notes) ?? OutOfReach(notes) ?? TooCloseToTune(notes);

    /// <summary>The voicing whose bells lie nearest to those wanted: the most of them, and then the least movement; null where only silence can be played.</summary>
    public static Items<WrittenNote>? Nearest(Items<WrittenNote> wanted, IEnumerable<Candidate> candidates)
    {
        int[] from = [.. wanted.Select(n => n.Midi).Take(VoiceLeading.Most)];
        return candidates
            .Select(c => c.Notes)
            .Where(notes => notes.Count > 0)
            .Distinct()
            .OrderByDescending(notes => notes.Count(wanted.Contains))
            .ThenBy(notes => VoiceLeading.Size(from, [.. notes.Select(n => n.Midi)]))
            .FirstOrDefault();
    }

    private static string? TooMany(Items<WrittenNote> notes) => notes.Count > MostTried
        ? $"two hands and two feet take at most {MostTried} bells at once"
        : null;

    // Every way to share the bells among the limbs is laid before the checker; what it says of the best is told.
    private string? OutOfReach(Items<WrittenNote> notes)
    {
        var checker = new Checker(tower);
        var best = Shared(notes, notes.Count)
            .Select(limbs => checker.Check(notes.Select((note, i) => new Stroke(note, limbs[i], Beats.Zero, Seconds.Zero, Seconds.Zero, Decibels.Zero))))
            .MinBy(breaches => breaches.Count);

        // Where a hand cannot span two bells it has no time for them either, which says less.
        return best?.OrderBy(b => b.Limit.EndsWith("_s", StringComparison.Ordinal)).FirstOrDefault() is { } breach
            ? $"{breach.Sentence} (limit {breach.Limit})"
            : null;
    }

    private IEnumerable<Limb[]> Shared(Items<WrittenNote> notes, int bells) => bells == 0
        ? [[]]
        : Shared(notes, bells - 1).SelectMany(
            _ => Limbs.Where(limb => limb is Limb.LeftHand or Limb.RightHand || tower.HasPedal(notes[bells - 1])),
            (first, limb) => (Limb[])[.. first, limb]);

    private string? TooCloseToTune(Items<WrittenNote> notes)
    {
        var open = new TuneFit(slot, new Reach(PlayingLimits.For(tower), tower.Transposition)).Open(notes);
        return notes.Except(open).Select(note => $"{note} lies less than a minor third from the tune, or on its other side{(tune is null ? "" : $" (the tune lies {tune.OctaveInWords})")}").FirstOrDefault();
    }
}
