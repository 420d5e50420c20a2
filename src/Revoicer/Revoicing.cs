using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Advice;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer;

/// <summary>The whole journey, from a lead sheet to an arrangement that can be played.</summary>
public static class Revoicing
{
    /// <summary>Arranges a sheet for a tower.</summary>
    /// <param name="sheet">The sheet, in the key in which it is to be played.</param>
    /// <param name="tower">The instrument.</param>
    /// <param name="sound">The sound asked for.</param>
    /// <param name="wish">What else the player asks for.</param>
    /// <param name="progress">Told the name of each stage as it begins; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The token is cancelled; the exception has that token.</exception>
    public static Drafting Draft(
        LeadSheet sheet, Tower tower, Sound sound, DraftWish wish, IProgress<Stage>? progress, CancellationToken cancel)
    {
        progress?.Report(Stage.Tables);
        var instrument = new Instrument(tower, sound);
        Drafting In(TuneLayout layout) => Draft(sheet, instrument, sound, wish, layout, progress, cancel);
        return (sheet.HasTune ? wish.Layout : LayoutWish.Above) switch
        {
            LayoutWish.Above => In(TuneLayout.Above),
            LayoutWish.Below => In(TuneLayout.Below),
            _ => LayoutChoosing.Cheaper(In(TuneLayout.Above), In(TuneLayout.Below)),
        };
    }

    private static Drafting Draft(
        LeadSheet sheet, Instrument instrument, Sound sound, DraftWish wish, TuneLayout layout, IProgress<Stage>? progress, CancellationToken cancel)
    {
        using var stop = wish.Effort.Deadline.With(cancel);
        try
        {
            return Draft(sheet, instrument, sound, wish, layout, progress, stop.Token, cancel);
        }
        catch (Exception e) when (BrokenOff.Is(e) && cancel.IsCancellationRequested)
        {
            throw new OperationCanceledException(cancel);
        }
        catch (Exception e) when (BrokenOff.Is(e) && wish.Effort.Deadline.HasPassed)
        {
            return new Drafting.OutOfTime($"the time limit came before {sheet.Title} was voiced to its end; give it more time with --time-limit, leave the limit out, or draft the sheet in parts");
        }
    }

    private static Drafting Draft(
        LeadSheet sheet, Instrument instrument, Sound sound, DraftWish wish, TuneLayout layout, IProgress<Stage>? progress, CancellationToken stop, CancellationToken cancel)
    {
        stop.ThrowIfCancellationRequested();
        var tower = instrument.Tower;
        var written = SheetTempi.Of(sheet);
        var tempi = wish.Tempo is { } steady ? TempoMap.Steady(steady) : written;
        var placing = new TunePlacing(sheet, tower, instrument.Reach, tempi, wish.EaseTune, layout);
        var search = new DraftSearch(sheet, tempi, instrument, sound, wish, progress, stop, cancel);
        var octaves = new OctaveSearch(sheet, placing, search, wish);
        if (octaves.Run(cancel) is { } refusal)
        {
            return refusal;
        }

        var first = octaves.Best;
        var last = search.Further(first.Prices, first.Found);
        if (last.Outcome is not Outcome.Found answer)
        {
            return search.Refusal(last.Prices, (Outcome.Impossible)last.Outcome);
        }

        progress?.Report(Stage.Reasons);
        var isAssumed = wish.Tempo is null && sheet.Tempo is null;
        answer = answer with { WasCutShort = answer.WasCutShort || wish.Effort.Deadline.HasPassed };
        var made = ArrangementMaking.Of(sheet, tempi, isAssumed, sound, last.Prices, answer) with
        {
            Wishes = search.Kept(varied: !ReferenceEquals(last.Prices, first.Prices)),
            OtherOctaves = octaves.Others,
        };
        var told = tempi == written ? made : WithSpeedsTold(made, written);
        return Checked(told, tower) switch
        {
            Drafting.Made done => done with
            {
                Terms = PricedTerms.Of(last.Prices.WholeTerms(answer.Choice)),
                WeakestCarry = last.Prices.WeakestCarry(answer.Choice),
                PlainHand = wish.WithPlainHand ? PlainHand.Of(made, sheet, sound, last.Prices) : null,
            },
            var unplayable => unplayable,
        };
    }

    // One tempo for the whole takes the place of all that the sheet has.
    private static Arrangement WithSpeedsTold(Arrangement made, TempoMap written) => written.Changes.Count == 1 ? made : made with
    {
        Totals = made.Totals with
        {
            LeftOut = made.Totals.LeftOut.Append("the sheet's changes of speed are left out, as one tempo was asked for").ToItems(),
        },
    };

    // Nothing leaves here that the checker, which knows no prices and no search, finds unplayable. Where the tune itself is
    // too quick, which is given and told, that is no fault of the arrangement.
    private static Drafting Checked(Arrangement arrangement, Tower tower)
    {
        var breaches = new Checker(tower).Check(arrangement.Strokes).Where(b => !b.InTune).ToArray();
        return breaches.Length == 0
            ? new Drafting.Made(arrangement)
            : new Drafting.Unplayable(breaches.Select(b => $"{Where(arrangement, b)}: {b.Sentence} (limit {b.Limit}){Remedy(b)}").ToItems());
    }

    private static string Remedy(Breach breach) =>
        breach.Limit.EndsWith("_s", StringComparison.Ordinal) ? "; a slower tempo gives more time" : "";

    private static string Where(Arrangement arrangement, Breach breach)
    {
        var choice = arrangement.Choices.LastOrDefault(c => arrangement.Tempi.At(c.Start) + arrangement.Shift <= breach.At) ?? arrangement.Choices[0];
        return FormattableString.Invariant($"bar {choice.Bar} beat {choice.Beat:0.##}, {choice.Symbol}");
    }
}
