using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>A note for which the tower has no bell.</summary>
/// <param name="Place">Where it is struck in the piece as heard.</param>
/// <param name="Note">The note.</param>
internal readonly record struct MissingNote(Beats Place, WrittenNote Note);

/// <summary>Gathers what cannot be played, place by place, with what would help.</summary>
internal static class Unplayables
{
    // Remedies are looked for at so many places, the first ones; a piece with more needs more than remedies.
    private const int MostRemedies = 40;

    /// <summary>The places in order.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="strokes">The strokes that have a bell.</param>
    /// <param name="missing">The notes that have none.</param>
    /// <param name="bars">The bars as heard.</param>
    /// <param name="remedies">Looks for remedies.</param>
    /// <param name="cancel">Stops the work.</param>
    public static Items<UnplayablePlace> Of(
        Tower tower, Items<Stroke> strokes, IEnumerable<MissingNote> missing, Items<ArrangedBar> bars, Remedies remedies, CancellationToken cancel)
    {
        var beatAt = strokes.GroupBy(s => s.At).ToDictionary(g => g.Key, g => g.First().Beat);
        var broken = new Checker(tower).Check(strokes)
            .Select(b => (Place: beatAt[b.At], Broken: new BrokenLimit(b.Limit, b.Sentence)))
            .ToLookup(b => b.Place, b => b.Broken);
        var lacking = missing.ToLookup(m => m.Place, m => m.Note);
        var places = new Places(bars);
        var all = broken.Select(b => b.Key).Union(lacking.Select(l => l.Key)).Order()
            .Select(place => (Place: place, Limits: WithoutConsequences([.. broken[place].DistinctBy(b => b.Limit)])))
            .ToArray();
        var remedied = all.Take(MostRemedies).ToArray().AsParallel().AsOrdered().WithCancellation(cancel).Select(p => RemedyOf(p.Place, p.Limits)).ToArray();
        return all.Select((p, i) =>
        {
            var (bar, beat) = places.Of(p.Place);
            var lacks = lacking[p.Place].Distinct().Order().ToItems();
            return new UnplayablePlace(bar.Number, bar.Pass, beat, p.Place, lacks, p.Limits.ToItems(), i < remedied.Length ? remedied[i] : null);
        }).ToItems();

        string? RemedyOf(Beats place, BrokenLimit[] limits) =>
            limits.Length > 0 ? remedies.At(place, limits.All(l => l.Limit.EndsWith("_s", StringComparison.Ordinal))) : null;
    }

    // Where there are too many notes, what their hands would have to do besides says nothing more.
    private static BrokenLimit[] WithoutConsequences(BrokenLimit[] limits) => limits.Any(b => b.Limit is "bells_at_once" or "hand_keys_at_once")
        ? [.. limits.Where(b => b.Limit is not ("hand_move_base_s" or "hand_span" or "hand_pair_lowest_n"))]
        : limits;

    /// <summary>The notes without a bell, each with the nearest that would stand for it.</summary>
    public static Items<MissingBell> Bells(Tower tower, IEnumerable<MissingNote> missing) => missing
        .Select(m => m.Note)
        .Distinct()
        .Order()
        .Select(note => new MissingBell(note, tower.Bells.Select(b => b.Note)
            .Where(n => n.PitchClass == note.PitchClass)
            .Select(n => (WrittenNote?)n)
            .MinBy(n => (n!.Value - note).Size.Semitones)))
        .ToItems();

    /// <summary>Keys, in semitones with a sign, in which every note has a bell; the nearest first.</summary>
    public static string[] KeysWithAllBells(Tower tower, IReadOnlyCollection<WrittenNote> notes) =>
    [
        .. Enumerable.Range(-11, 23)
            .Where(up => notes.All(n => n.Midi + up is >= 0 and <= 127 and var midi && tower.At(WrittenNote.AtMidi(midi)) is not null))
            .OrderBy(Math.Abs)
            .Select(up => up.ToString("+0;-0", CultureInfo.InvariantCulture)),
    ];

    /// <summary>A sentence where remedies were not looked for everywhere.</summary>
    public static IEnumerable<string> Told(Items<UnplayablePlace> places)
    {
        if (places.Count > MostRemedies)
        {
            yield return $"remedies were looked for at the first {MostRemedies} places that cannot be played";
        }
    }
}
