using Revoicer.Arrangements;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Advice;
using Revoicer.Solving.Rules;
using Revoicer.Solving.Windows;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer;

/// <summary>The searches of one draft: the first answer, other answers, repeats that are not alike; and why there is none.</summary>
/// <param name="sheet">The sheet.</param>
/// <param name="tempi">Its speeds.</param>
/// <param name="instrument">The tower.</param>
/// <param name="sound">The sound.</param>
/// <param name="wish">What else is asked.</param>
/// <param name="progress">Told the stages.</param>
/// <param name="stop">Stops what has to be done before there is an answer: the deadline, or the caller.</param>
/// <param name="cancel">The caller alone.</param>
internal sealed class DraftSearch(
    LeadSheet sheet, TempoMap tempi, Instrument instrument, Sound sound, DraftWish wish, IProgress<Stage>? progress, CancellationToken stop, CancellationToken cancel)
{
    // Enough for all cores, few enough that a tune laid too dear is soon left. Estimate.
    private const int SlotsAtATime = 64;

    private readonly Items<Rule> _wishes = wish.Wishes.All.Select(w => (Rule)new WishRule(w)).ToItems();

    /// <summary>The sheet in slots, with the tune in one place; null where it has none.</summary>
    public SlotPlan Cut(PlacedTune? tune, bool passesApart = false)
    {
        progress?.Report(Stage.Slots);
        var plan = SlotCutting.Cut(sheet, tempi, tune, CutWish(passesApart));
        plan = plan with { Slots = plan.Slots.Select(WithAsked).ToItems() };
        plan = sound.Approach > 0 ? ApproachTones.Marked(plan) : plan;
        return wish.Original is { } original ? original.In(plan) : plan;
    }

    private Slot WithAsked(Slot slot) => slot with
    {
        Asked = wish.Wishes.All
            .Where(w => !w.IsBan && w.At.Holds(slot.Bar, slot.BeatNumber))
            .Select(w => w.Thing).OfType<WishedThing.WholeVoicing>().Select(v => v.Notes).ToItems(),
    };

    /// <summary>The answer to a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="most">It is left as soon as every choice costs more than this, the tune included.</param>
    /// <param name="isNeeded">Whether it cannot be done without when the deadline comes.</param>
    public PlanTried Best(SlotPlan plan, long most, bool isNeeded)
    {
        try
        {
            return plan.Slots.Count > SlotWindows.LongestWhole && wish is { Another: 0, VaryRepeats: false } ? InWindows(plan, most) : Whole(plan, most);
        }
        catch (Exception e) when (BrokenOff.Is(e) && !isNeeded && !cancel.IsCancellationRequested)
        {
            return new PlanTried.OutOfTime();
        }
    }

    /// <summary>What the tune of a plan costs by itself.</summary>
    public long OfTune(SlotPlan plan) => new SlotPricing(instrument, sound, plan).OfTune;

    /// <summary>What every choice of a plan costs at the least, the tune included: the cheapest candidate of each slot by itself.</summary>
    public long Least(SlotPlan plan, CancellationToken until)
    {
        var search = new CandidateSearch(instrument.Tower, instrument.Reach, sound.RollStep);
        var pricing = new SlotPricing(instrument, sound, plan);
        return pricing.Least + plan.Slots.AsParallel().WithCancellation(until).Sum(slot => (long)pricing.Useful(slot, search.List(slot)).Prices.Min());
    }

    private PlanTried Whole(SlotPlan plan, long most)
    {
        var (prices, least) = Price(plan, most);
        return prices is null ? new PlanTried.TooDear(least) : new PlanTried.Searched(prices, Answer(prices, []));
    }

    // What the windows of a long piece come to together is played as it is, unless that only shows in the whole not to do.
    private PlanTried InWindows(SlotPlan plan, long most)
    {
        progress?.Report(Stage.Search);
        var listing = new CandidateSearch(instrument.Tower, instrument.Reach, sound.RollStep);
        Rule[] rules = [.. _wishes, .. RulesOf(plan)];
        var windows = new WindowSearch(plan, new SlotPricing(instrument, sound, plan), listing.List, rules, wish.Effort, stop, cancel);
        return windows.Best(most) is not { } best ? new PlanTried.TooDear(windows.Least)
            : windows.CanBePlayed(best) ? new PlanTried.Searched(best.Prices, best.Outcome)
            : Whole(plan, long.MaxValue);
    }

    // What can be played in the slots, priced; no prices where every choice costs more than the most. And what all cost at the least, as far as that was seen.
    private (SheetPrices? Prices, long Least) Price(SlotPlan plan, long most = long.MaxValue, bool keepsAll = false)
    {
        var search = new CandidateSearch(instrument.Tower, instrument.Reach, sound.RollStep);
        var pricing = new SlotPricing(instrument, sound, plan);
        foreach (var slots in plan.Slots.Chunk(SlotsAtATime))
        {
            progress?.Report(Stage.Candidates);
            var candidates = slots.AsParallel().AsOrdered().WithCancellation(stop).Select(search.List).ToArray();
            progress?.Report(Stage.Prices);
            pricing.Add(candidates, keepsAll, stop);
            if (pricing.Least > most)
            {
                return (null, pricing.Least);
            }
        }

        return (pricing.Linked(stop), pricing.Least);
    }

    /// <summary>The answer under the sound's rules, the player's wishes, and what else is asked.</summary>
    public Outcome Answer(SheetPrices prices, Items<Rule> besides)
    {
        progress?.Report(Stage.Search);
        return Search.Run(prices, [.. _wishes, .. besides, .. RulesOf(prices.Plan)], wish.Effort, cancel);
    }

    /// <summary>What else the player asks of a first answer: another one, and repeats that are not alike.</summary>
    public (SheetPrices Prices, Outcome Outcome) Further(SheetPrices prices, Outcome.Found first)
    {
        var another = Another(prices, first);
        return wish.VaryRepeats && another is Outcome.Found found && SecondTime(prices, found) is { } second ? second : (prices, another);
    }

    private Outcome Another(SheetPrices prices, Outcome.Found first)
    {
        var answers = new List<Outcome.Found> { first };
        for (var number = 1; number <= wish.Another; number++)
        {
            var rules = OtherAnswers.Rules(prices, answers);
            var outcome = Answer(prices, rules);
            if (outcome is not Outcome.Found found)
            {
                return outcome;
            }

            answers.Add(found);
        }

        return answers[^1];
    }

    // The slots with their passes apart, and the answer in which repeats are not alike; null where nothing is repeated.
    private (SheetPrices Prices, Outcome Outcome)? SecondTime(SheetPrices alike, Outcome.Found found)
    {
        var plan = Cut(alike.Plan.Tune, passesApart: true);
        var rules = SecondTimes.Rules(alike, found, plan);
        if (rules.Count == 0)
        {
            return null;
        }

        // What is heard for the first time stays as it is, whatever it costs by itself.
        var prices = Price(plan, keepsAll: true).Prices!;
        return (prices, Answer(prices, rules));
    }

    /// <summary>What the player wished for, in sentences, as the report tells what was kept.</summary>
    public Items<string> Kept(bool varied)
    {
        var bars = wish.Wishes.Phrases.Select(p => p.Bar).Distinct().Order().ToArray();
        return
        [
            .. wish.Wishes.All.Select(w => w.Words),
            .. bars.Select(bar => $"a phrase begins in bar {bar}"),
            .. wish.Octave is { } octave && sheet.HasTune ? [$"the tune {OctaveNames.Of(octave)}"] : Array.Empty<string>(),
            .. wish.Another == 0 ? Array.Empty<string>() : [$"another answer, number {wish.Another}: other bells than in each answer before it in a quarter of the written chords"],
            .. (wish.VaryRepeats, varied) switch
            {
                (false, _) => Array.Empty<string>(),
                (true, true) => ["what is repeated has other bells in at least one chord of each passage"],
                (true, false) => ["repeats that are not alike, but nothing in this sheet is heard twice"],
            },
        ];
    }

    /// <summary>Why there is no draft, and what would help.</summary>
    public Drafting Refusal(SheetPrices prices, Outcome.Impossible impossible)
    {
        var slower = new SlowerTempo(sheet, instrument.Tower, instrument.Reach, sound, wish.EaseTune, CutWish(passesApart: false));
        var beat = sheet.Bars[0].Meter.Beat.Quarters;
        var advice = new ConflictAdvice(prices, slower, tempi.Changes.Max(c => c.Tempo.QuartersPerMinute) / beat, sound.RollStep);
        var said = impossible.Conflicts.Select(advice.Of).ToList();
        var problems = said.Select(s => s.AtWish).OfType<Problem>().Distinct().OrderBy(p => p.Where.Line).ThenBy(p => p.Where.Column).ToItems();
        return problems.Count > 0
            ? new Drafting.Unmet(problems)
            : Refused(impossible, said.Select(s => $"no voicing of {sheet.Title} on {instrument.Tower.Name} will do: {s.Sentence}").ToItems());
    }

    // Time and strength are what the player has; all else was asked for, and the sheet could be played without it.
    private static Drafting Refused(Outcome.Impossible impossible, Items<string> sentences) =>
        impossible.Conflicts.SelectMany(c => c.Rules).All(r => r is TimeToMove or HeavyStrokes) ? new Drafting.Unplayable(sentences) : new Drafting.Ruled(sentences);

    // Where the tune lies below it is the bass, so nothing is asked of another.
    private IEnumerable<Rule> RulesOf(SlotPlan plan) => SoundRules.Of(sound)
        .Append(new HeavyStrokes(PlayingLimits.For(instrument.Tower).Hard("heavy_strokes_in_10_s")))
        .Where(rule => plan.Tune?.Layout != TuneLayout.Below || rule is not (RootLowest or BassOnStrongBeats));

    private CutWish CutWish(bool passesApart) => new(wish.Wishes.Phrases.Select(p => p.Bar).ToItems(), passesApart);
}
