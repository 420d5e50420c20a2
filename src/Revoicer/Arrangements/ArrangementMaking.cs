using Revoicer.Chords;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Arrangements;

/// <summary>Makes the arrangement of a search's answer: strokes on the clock, and the reasons of every chord.</summary>
public static class ArrangementMaking
{
    private const int QuarrelsShown = 3;

    /// <summary>Makes it.</summary>
    /// <param name="sheet">The sheet in the key played.</param>
    /// <param name="tempi">The speeds.</param>
    /// <param name="tempoIsAssumed">Whether neither sheet nor player named one.</param>
    /// <param name="sound">The sound.</param>
    /// <param name="prices">The priced slots.</param>
    /// <param name="found">The search's answer.</param>
    public static Arrangement Of(LeadSheet sheet, TempoMap tempi, bool tempoIsAssumed, Sound sound, SheetPrices prices, Outcome.Found found)
    {
        var plan = prices.Plan;
        var chosen = plan.Slots.Select(s => prices.Candidates(s.Index)[found.Choice[s.Index]]).ToArray();
        var strokes = StrokesInTime.Of(plan, chosen, tempi, sound, prices.Instrument);
        var inTime = strokes.InChords(plan, prices.Instrument.Tower.Transposition);
        var clash = new ClashInTime(prices.Instrument, inTime, strokes.Tune);
        var reasons = plan.Slots.AsParallel().AsOrdered().Select(s => new Reasons(prices, found, s)).ToArray();
        var heard = plan.InTime().ToArray();
        var choices = heard.AsParallel().AsOrdered()
            .Select((h, i) => ToChoice(h.Slot, h.Hearing, chosen[h.Slot.Index], strokes.OfHearing[i], clash, reasons[h.Slot.Index]) with
            {
                LeftRinging = i == 0 ? [] : LeftRinging(h.Slot, chosen[h.Slot.Index], chosen[heard[i - 1].Slot.Index]),
            })
            .ToItems();
        var all = strokes.All;
        var asHeard = HeardSound.Of(prices.Instrument, inTime, strokes.Tune);
        var alike = HeardSound.Of(prices.Instrument, inTime.Select(c => c with { Strokes = HeardSound.AtEqualTouch(c.Strokes) }), HeardSound.AtEqualTouch(strokes.Tune));
        var plain = Yardsticks.OfPlainHand(prices, tempi, sound);
        var close = Yardsticks.OfCloseRoot(prices, tempi, sound);
        return new Arrangement(
            sheet.Title,
            StrokeFigures.SummaryOf(prices.Instrument.Tower),
            sound.Name,
            sheet.Key,
            sheet.Key?.Moved(prices.Instrument.Tower.Transposition.Semitones),
            tempi,
            tempoIsAssumed,
            StrokeFigures.BarsOf(sheet),
            strokes.Shift,
            all,
            choices,
            TotalsOf(plan, chosen, all, choices, found) with
            {
                TuneDose = clash.DoseOfTune(),
                Fatigue = Fatigue.Of(all, PlayingLimits.For(prices.Instrument.Tower)),
                SoftTune = SoftTune.Of(prices, found.Choice, strokes.Shift),
                Carry = asHeard.Carry,
                CarryAtEqualTouch = alike.Carry,
                Brightness = asHeard.Brightness,
                StrongBeats = StrongBeatsOf(plan, chosen),
                CloseRootDose = close.Dose,
                CloseRootStrokes = close.Strokes,
                PlainHandDose = plain.Dose,
                PlainHandStrokes = plain.Strokes,
            },
            new SearchStatus(found.Price, found.Bound, found.Starts) { WasCutShort = found.WasCutShort })
        {
            TuneOctaves = plan.Tune?.Octaves,
            Unheard = sheet.Unheard,
            Layout = plan.Tune is { } tune ? new ChosenLayout(tune.Layout, found.Price + prices.Tune) : null,
        };
    }

    private static Choice ToChoice(Slot slot, Hearing hearing, Candidate chosen, Items<Stroke> strokes, ClashInTime clash, Reasons reasons) => new(
        slot.Bar,
        hearing.Pass,
        slot.BeatNumber,
        hearing.Start,
        slot.Length,
        slot.Symbol.ToString(),
        SoundingBass(slot, chosen),
        FigureNames.Of(chosen.Figure),
        strokes.OrderBy(s => s.Note).ThenBy(s => s.At.Value).ToItems(),
        clash.FigureOf(hearing.Order),
        clash.DoseOf(hearing.Order),
        clash.CloseRootOf(hearing.Order, slot.Symbol),
        clash.QuarrelsOf(hearing.Order, QuarrelsShown),
        clash.RingingOn(hearing.Order),
        reasons.Alternatives,
        reasons.Terms,
        reasons.Barred)
    {
        Hearings = slot.Hearings.Count,
        Former = reasons.Former,
        ToneNames = ToneNames(slot.Symbol),
    };

    private static Items<NoteName> LeftRinging(Slot slot, Candidate chosen, Candidate before)
    {
        var ringing = slot.LeftRinging(chosen.Voicing).Common(PitchClassSet.Of(before.Voicing.Upper.Select(b => b.Note.PitchClass)));
        return slot.Symbol.Tones.Select(t => t.Name).Where(name => ringing.Contains(name.PitchClass)).ToItems();
    }

    /// <summary>The names of <see cref="Choice.ToneNames"/>; a slash bass is called as it is written, whatever the tone above it.</summary>
    internal static Items<NoteName> ToneNames(ChordSymbol symbol) =>
        symbol.Tones.Select(t => t.Name).Prepend(symbol.Lowest).Distinct().ToItems();

    // The bass bell where the symbol asks for another: as the chord spells it, or, where music as it was has a foreign bass, as the key does.
    private static NoteName? SoundingBass(Slot slot, Candidate chosen)
    {
        if (chosen.Voicing.Bass is not { } lowest || lowest.PitchClass == slot.Symbol.Lowest.PitchClass)
        {
            return null;
        }

        return slot.Symbol.Tones.Select(t => t.Name)
            .Concat(Enumerable.Range((slot.Key?.Fifths ?? 0) - 3, 12).Select(NoteName.AtFifths))
            .First(name => name.PitchClass == lowest.PitchClass);
    }

    private static StrongBeats StrongBeatsOf(SlotPlan plan, Candidate[] chosen)
    {
        var all = plan.InTime().Select(h => h.Slot).Where(s => s.IsStrong && s.IsNewChord).ToArray();
        var longEnough = all.Where(s => !s.IsQuick).ToArray();
        return new StrongBeats(longEnough.Count(s => chosen[s.Index].Voicing.Bass is not null), longEnough.Length, all.Length);
    }

    private static Totals TotalsOf(SlotPlan plan, Candidate[] chosen, Items<Stroke> strokes, Items<Choice> choices, Outcome.Found found)
    {
        var (from, heavy) = StrokeFigures.HeaviestPassage(strokes);
        return new Totals(
            found.Price,
            choices.Sum(c => c.Dose),
            StrokeFigures.Median(choices.Select(c => c.Clash.Avoidable)),
            strokes.Select(s => s.Note).Distinct().Order().ToItems(),
            strokes.Where(s => s.IsPedal).Select(s => (WrittenNote?)s.Note).Max(),
            plan.InTime().Count(h => chosen[h.Slot.Index].Voicing.Bass?.PitchClass == h.Slot.Symbol.Lowest.PitchClass) / (double)choices.Count,
            from,
            heavy,
            (plan.Tune?.Told ?? []).Concat(found.Lifted).ToItems());
    }
}
