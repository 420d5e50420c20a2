using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer;

/// <summary>The whole journey, from a lead sheet to an arrangement that can be played.</summary>
public static class Revoicing
{
    // The tempo of a sheet that names none, to the beat of its metre. Common practice: a quiet walking pace.
    private const double AssumedPerMinute = 84;

    /// <summary>Arranges a sheet for a tower.</summary>
    /// <param name="sheet">The sheet, in the key in which it is to be played.</param>
    /// <param name="tower">The instrument.</param>
    /// <param name="sound">The sound asked for.</param>
    /// <param name="tempo">The player's tempo; null for the sheet's own.</param>
    /// <param name="progress">Told the name of each stage as it begins; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    public static Drafting Draft(
        LeadSheet sheet, Tower tower, Sound sound, Tempo? tempo, IProgress<Stage>? progress, CancellationToken cancel)
    {
        progress?.Report(Stage.Slots);
        var tempi = TempoMap.Steady(tempo ?? sheet.Tempo ?? new Tempo(sheet.Bars[0].Meter.Beat, AssumedPerMinute));
        var plan = SlotCutting.Cut(sheet, tempi);
        if (plan.Slots.Count == 0)
        {
            return new Drafting.Unplayable([$"{sheet.Title} has no chord symbols, so there is nothing to voice"]);
        }

        progress?.Report(Stage.Tables);
        var instrument = new Instrument(tower, sound);
        progress?.Report(Stage.Candidates);
        var search = new CandidateSearch(tower, instrument.Reach, sound.RollStep);
        var candidates = plan.Slots.AsParallel().AsOrdered().WithCancellation(cancel).Select(search.List).ToArray();
        progress?.Report(Stage.Prices);
        var prices = SheetPrices.Of(instrument, sound, plan, candidates, cancel);
        progress?.Report(Stage.Search);
        switch (Search.Run(prices, SoundRules.Of(sound), cancel))
        {
            case Outcome.Found found:
                progress?.Report(Stage.Reasons);
                var isAssumed = tempo is null && sheet.Tempo is null;
                return Checked(ArrangementMaking.Of(sheet, tempi, isAssumed, sound, prices, found), tower);
            case Outcome.Impossible impossible:
                return new Drafting.Unplayable(
                    [$"no voicing of {sheet.Title} on {tower.Name} keeps all of these: {string.Join("; ", impossible.Rules)}"]);
            case var other:
                throw new InvalidOperationException($"no such outcome: {other}");
        }
    }

    // Nothing leaves here that the checker, which knows no prices and no search, finds unplayable.
    private static Drafting Checked(Arrangement arrangement, Tower tower)
    {
        var breaches = new Checker(tower).Check(arrangement.Strokes);
        return breaches.Count == 0
            ? new Drafting.Made(arrangement)
            : new Drafting.Unplayable(breaches.Select(b => $"{Where(arrangement, b)}: {b.Sentence} (limit {b.Limit}); a slower tempo gives more time").ToItems());
    }

    private static string Where(Arrangement arrangement, Breach breach)
    {
        var choice = arrangement.Choices.Last(c => c.Strokes.Any(s => s.At <= breach.At));
        return FormattableString.Invariant($"bar {choice.Bar} beat {choice.Beat:0.##}, {choice.Symbol}");
    }
}
