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

    private const string NoBell = "bell";

    /// <summary>The places in order.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="strokes">The strokes that have a bell.</param>
    /// <param name="missing">The notes that have none.</param>
    /// <param name="bars">The bars as heard.</param>
    /// <param name="remedies">Looks for remedies.</param>
    public static Items<UnplayablePlace> Of(
        Tower tower, Items<Stroke> strokes, IEnumerable<MissingNote> missing, Items<ArrangedBar> bars, Remedies remedies)
    {
        var beatAt = strokes.GroupBy(s => s.At).ToDictionary(g => g.Key, g => g.First().Beat);
        var broken = new Checker(tower).Check(strokes)
            .Select(b => (Place: beatAt[b.At], Broken: new BrokenLimit(b.Limit, b.Sentence)))
            .ToLookup(b => b.Place, b => b.Broken);
        var lacking = missing.ToLookup(m => m.Place, m => m.Note);
        var places = new Places(bars);
        return broken.Select(b => b.Key).Union(lacking.Select(l => l.Key)).Order().ToArray()
            .AsParallel().AsOrdered()
            .Select((place, i) =>
            {
                var limits = broken[place].DistinctBy(b => b.Limit).ToArray();
                var bells = lacking[place].Select(n => new BrokenLimit(NoBell, Lacks(tower, n)));
                var (bar, beat) = places.Of(place);
                return new UnplayablePlace(bar.Number, bar.Pass, beat, place, bells.Concat(limits).ToItems(), RemedyOf(place, limits, i));
            })
            .ToItems();

        string? RemedyOf(Beats place, BrokenLimit[] limits, int order) => order < MostRemedies && limits.Length > 0
            ? remedies.At(place, limits.All(l => l.Limit.EndsWith("_s", StringComparison.Ordinal)))
            : null;
    }

    /// <summary>What is told of the whole: keys that have all bells, and where remedies end.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="notes">All notes of the piece, with and without a bell.</param>
    /// <param name="places">The places that cannot be played.</param>
    public static IEnumerable<string> Told(Tower tower, IReadOnlyCollection<WrittenNote> notes, Items<UnplayablePlace> places)
    {
        if (places.Any(p => p.Broken.Any(b => b.Limit == NoBell)) && KeysWithAllBells(tower, notes) is { Length: > 0 } keys)
        {
            yield return $"every note has a bell with --key {string.Join(", ", keys)}";
        }

        if (places.Count > MostRemedies)
        {
            yield return $"remedies were looked for at the first {MostRemedies} places that cannot be played";
        }
    }

    private static string[] KeysWithAllBells(Tower tower, IReadOnlyCollection<WrittenNote> notes) =>
    [
        .. Enumerable.Range(-11, 23)
            .Where(up => notes.All(n => n.Midi + up is >= 0 and <= 127 and var midi && tower.At(WrittenNote.AtMidi(midi)) is not null))
            .OrderBy(Math.Abs)
            .Select(up => up.ToString("+0;-0", CultureInfo.InvariantCulture)),
    ];

    // With the nearest octave that has a bell.
    private static string Lacks(Tower tower, WrittenNote note)
    {
        var other = tower.Bells.Select(b => b.Note).Where(n => n.PitchClass == note.PitchClass).OrderBy(n => (n - note).Size.Semitones).ToArray();
        var nearest = other.Length == 0 ? "nor one in any other octave" : $"the nearest is on {other[0]}";
        return $"{tower.Name} has no bell on {note}, {nearest}";
    }
}
