using Revoicer.Arrangements;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>What a report is headed with.</summary>
/// <param name="Title">The title.</param>
/// <param name="Key">The written key; null where none is named.</param>
/// <param name="TempoIsAssumed">Whether nobody named a tempo.</param>
internal sealed record AuditHead(string Title, KeySignature? Key, bool TempoIsAssumed);

/// <summary>Makes the report of strokes that are on the clock.</summary>
internal sealed class AuditMaking(Instrument instrument, Sound sound, Items<ArrangedBar> bars, TempoMap tempi, Seconds shift, IProgress<AuditStage>? progress, CancellationToken cancel)
{
    private const int QuarrelsShown = 3;

    /// <summary>Begins to look for what cannot be played.</summary>
    /// <param name="strokes">All strokes that have a bell, in order of time.</param>
    /// <param name="missing">The notes that have none.</param>
    public Task<Items<UnplayablePlace>> Limits(Items<Stroke> strokes, Items<MissingNote> missing) => Task.Run(
        () => Unplayables.Of(instrument.Tower, strokes, missing, bars, new Remedies(instrument.Tower, strokes, tempi, sound.RollStep), cancel), cancel);

    /// <summary>Makes it.</summary>
    /// <param name="head">What it is headed with.</param>
    /// <param name="strokes">All strokes that have a bell, in order of time.</param>
    /// <param name="missing">The notes that have none.</param>
    /// <param name="limits">What cannot be played.</param>
    /// <param name="stretches">The stretches of the piece, each with the strokes that are no tune's.</param>
    public AuditReport Of(AuditHead head, Items<Stroke> strokes, Items<MissingNote> missing, Task<Items<UnplayablePlace>> limits, Items<Stretch> stretches)
    {
        var tower = instrument.Tower;
        var tune = strokes.Where(s => s.IsTune).ToArray();
        var inTime = stretches.Select(s => s.InTime(tempi, shift, tower.Transposition)).ToArray();
        progress?.Report(AuditStage.Clash);
        var clash = new ClashInTime(instrument, inTime, tune, cancel);
        var barClashes = Task.Run(() => BarsOf(strokes, clash), cancel);

        // The first figure adds all of them up on all cores, so it is not asked for by one core while the others wait.
        ClashSplit[] figures = [.. stretches.Select((_, i) => clash.FigureOf(i))];
        var chords = stretches.ToArray().AsParallel().AsOrdered().WithCancellation(cancel).Select((s, i) => ToChord(s, i, figures[i], clash)).ToItems();
        var sounds = HeardSound.Of(instrument, inTime, tune);
        progress?.Report(AuditStage.Limits);
        var unplayable = limits.GetAwaiter().GetResult();
        var (from, heavy) = StrokeFigures.HeaviestPassage(strokes);
        return new AuditReport(
            head.Title,
            StrokeFigures.SummaryOf(tower),
            sound.Name,
            head.Key,
            head.Key?.Moved(tower.Transposition.Semitones),
            tempi,
            head.TempoIsAssumed,
            bars,
            shift,
            strokes,
            chords,
            barClashes.GetAwaiter().GetResult(),
            unplayable,
            new AuditTotals(
                chords.Sum(c => c.Dose),
                clash.DoseOfTune(),
                MedianOf(chords, c => c.Avoidable),
                MedianOf(chords, c => c.Whole),
                sounds.Carry,
                sounds.Brightness,
                strokes.Select(s => s.Note).Distinct().Order().ToItems(),
                from,
                heavy,
                Fatigue.Of(strokes, PlayingLimits.For(tower))))
        {
            MissingBells = Unplayables.Bells(tower, missing),
            Told = [.. Unplayables.Told(unplayable)],
        };
    }

    private AuditedChord ToChord(Stretch stretch, int order, ClashSplit figure, ClashInTime clash)
    {
        var (bar, beat) = new Places(bars).Of(stretch.Start);
        return new AuditedChord(
            bar.Number,
            bar.Pass,
            beat,
            stretch.Start,
            stretch.Length,
            stretch.Symbol?.ToString(),
            stretch.Symbol is { } symbol ? ArrangementMaking.ToneNames(symbol) : [],
            stretch.Strokes,
            figure,
            clash.DoseOf(order),
            clash.QuarrelsOf(order, QuarrelsShown));
    }

    // As with chords, a roll that leads into a bar belongs to it and not to the bar before.
    private Items<AuditedBar> BarsOf(Items<Stroke> strokes, ClashInTime clash)
    {
        var struck = bars.Select(_ => (Count: 0, First: double.PositiveInfinity)).ToArray();
        foreach (var stroke in strokes)
        {
            var bar = Sorted.LastUpTo(bars, stroke.Beat, b => b.Start);
            struck[bar] = (struck[bar].Count + 1, Math.Min(struck[bar].First, stroke.At.Value));
        }

        double[] starts = [.. bars.Select(bar => (tempi.At(bar.Start) + shift).Value), (tempi.At(bars[^1].Start + bars[^1].Length) + shift).Value];
        double[] begins = [.. struck.Select((s, i) => Math.Min(starts[i], s.First)), starts[^1]];
        var windows = bars.Select((_, i) => (new Seconds(begins[i]), new Seconds(begins[i + 1] > begins[i] ? begins[i + 1] : starts[i + 1]))).ToArray();
        return clash.Within(windows, cancel).Select((figure, i) => new AuditedBar(figure, struck[i].Count)).ToItems();
    }

    private static double MedianOf(Items<AuditedChord> chords, Func<ClashSplit, double> figure)
    {
        var named = chords.Any(c => c.Symbol is not null) ? chords.Where(c => c.Symbol is not null) : chords;
        return chords.Count == 0 ? 0 : StrokeFigures.Median(named.Select(c => figure(c.Clash)));
    }
}
