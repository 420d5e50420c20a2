using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>Says of music that exists what it is like on a tower; nothing of it is changed.</summary>
public static class Auditing
{
    /// <summary>A passage, which lies where it is written; its limbs are found by the least effort.</summary>
    /// <param name="passage">The passage, in the key in which it is to be played.</param>
    /// <param name="chords">The chords that its clash is held against: its own sheet, or chords found in it, bar for bar the same.</param>
    /// <param name="tower">The instrument.</param>
    /// <param name="sound">The sound whose fade, touch and roll step are used.</param>
    /// <param name="tempo">The player's tempo; null for the passage's own.</param>
    /// <param name="tune">Its tune, to be told apart from the rest; null where all notes are told alike.</param>
    /// <param name="progress">Told the name of each stage as it begins; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The chords stand over other bars than the passage.</exception>
    public static AuditReport Of(Passage passage, LeadSheet chords, Tower tower, Sound sound, Tempo? tempo, PassageTune? tune = null, IProgress<AuditStage>? progress = null, CancellationToken cancel = default) =>
        Of(passage, () => chords, tower, sound, tempo, tune, progress, cancel);

    /// <summary>The same where the chords are still being found: they are asked for when the limbs are known.</summary>
    /// <param name="passage">The passage, in the key in which it is to be played.</param>
    /// <param name="whenFound">The chords that its clash is held against, once they are found.</param>
    /// <param name="tower">The instrument.</param>
    /// <param name="sound">The sound whose fade, touch and roll step are used.</param>
    /// <param name="tempo">The player's tempo; null for the passage's own.</param>
    /// <param name="tune">Its tune, to be told apart from the rest; null where all notes are told alike.</param>
    /// <param name="progress">Told the name of each stage as it begins; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The chords stand over other bars than the passage.</exception>
    public static AuditReport Of(
        Passage passage, Func<LeadSheet> whenFound, Tower tower, Sound sound, Tempo? tempo, PassageTune? tune, IProgress<AuditStage>? progress, CancellationToken cancel)
    {
        progress?.Report(AuditStage.Tables);
        var instrument = new Instrument(tower, sound);
        var written = SheetTempi.Of(passage.Sheet);
        var tempi = tempo is { } steady ? TempoMap.Steady(steady) : written;
        progress?.Report(AuditStage.Limbs);
        var played = PassageStrokes.Of(passage, tune, tempi, instrument, sound, cancel);
        var making = new AuditMaking(instrument, sound, StrokeFigures.BarsOf(passage.Sheet), tempi, played.Shift, progress, cancel);
        var missing = played.Missing.Select(n => new MissingNote(n.Start, n.Note)).ToItems();
        var limits = making.Limits(played.Strokes, missing);
        var chords = whenFound();
        if (!chords.HasBarsOf(passage.Sheet))
        {
            throw new ArgumentException("the chords stand over other bars than the passage", nameof(whenFound));
        }

        var report = making.Of(
            new AuditHead(passage.Sheet.Title, passage.Sheet.Key, tempo is null && passage.Sheet.Tempo is null),
            played.Strokes,
            missing,
            limits,
            Stretch.Of(chords, tempi, played.Strokes));
        return report with
        {
            Told =
            [
                .. OfPassage(chords, isOneTempo: tempi != written && written.Changes.Count > 1),
                .. played.Missing.Count == 0 ? [] : Keys(tower, played),
                .. report.Told,
            ],
        };
    }

    /// <summary>An arrangement of this program, whose strokes, limbs and times are exact.</summary>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="tower">The instrument on which it is to be played.</param>
    /// <param name="sound">The sound whose fade and roll step are used; touch is the arrangement's own.</param>
    /// <param name="progress">Told the name of each stage as it begins; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    public static AuditReport Of(Arrangement arrangement, Tower tower, Sound sound, IProgress<AuditStage>? progress = null, CancellationToken cancel = default)
    {
        progress?.Report(AuditStage.Tables);
        var strokes = arrangement.Strokes.ToLookup(s => tower.At(s.Note) is not null);
        var symbols = arrangement.Choices.Select(c => SymbolOf(c.Symbol)).ToArray();
        var stretches = arrangement.Choices.Select((c, i) => new Stretch(
            c.Start, c.Length, symbols[i], PassageStrokes.InOrder(c.Strokes.Where(s => tower.At(s.Note) is not null))));
        var unread = arrangement.Choices.Where((_, i) => symbols[i] is null).Select(c => c.Symbol).Distinct();
        var (struck, missing) = (PassageStrokes.InOrder(strokes[true]), strokes[false].Select(s => new MissingNote(s.Beat, s.Note)).ToItems());
        var making = new AuditMaking(new Instrument(tower, sound), sound, arrangement.Bars, arrangement.Tempi, arrangement.Shift, progress, cancel);
        var report = making.Of(
            new AuditHead(arrangement.Title, arrangement.WrittenKey, arrangement.TempoIsAssumed),
            struck,
            missing,
            making.Limits(struck, missing),
            stretches.ToItems());
        return report with
        {
            LimbsAreGiven = true,
            Told =
            [
                .. StrokeFigures.SummaryOf(tower) == arrangement.Tower ? [] : new[] { $"it was made for {arrangement.Tower.Name}" },
                .. arrangement.Sound == sound.Name ? [] : new[] { $"it was made in the sound {arrangement.Sound}, whose touch it keeps" },
                .. StrokeFigures.SummaryOf(tower) == arrangement.Tower && arrangement.Sound == sound.Name ? StoredFigures.Told(arrangement, report) : [],
                .. unread.Select(symbol => $"{symbol} is no chord symbol that can be read, so nothing contradicts it"),
                .. report.Told,
            ],
        };
    }

    private static IEnumerable<string> OfPassage(LeadSheet chords, bool isOneTempo)
    {
        if (!chords.HasChords)
        {
            yield return "there are no chord symbols, so no contradiction is told, and clash is roughness alone";
        }

        if (isOneTempo)
        {
            yield return "the changes of speed are left out, as one tempo was asked for";
        }
    }

    private static IEnumerable<string> Keys(Tower tower, PassageStrokes played)
    {
        var keys = Unplayables.KeysWithAllBells(tower, [.. played.Strokes.Select(s => s.Note), .. played.Missing.Select(n => n.Note)]);
        yield return keys.Length > 0
            ? $"every note has a bell with --key {string.Join(", ", keys)}"
            : "in no key within an octave does every note have a bell";
    }

    private static ChordSymbol? SymbolOf(string text) =>
        ChordSymbolReader.Read(text, Place.WholeFile("")) is Reading<ChordText>.Accepted { Value: ChordText.Chord chord } ? chord.Symbol : null;
}
