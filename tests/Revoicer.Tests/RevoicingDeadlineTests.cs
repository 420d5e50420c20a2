using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Solving.Windows;
using Revoicer.Sounds;
using Revoicer.Tests.Values;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests;

public class RevoicingDeadlineTests
{
    private const string Head = "title: Slack Tide\nkey: C\ntime: 4/4\ntempo: 152\n";

    private static readonly string Short = Head + "| C | F G7 | C |]\n";

    // Longer than what is searched as a whole.
    private static readonly string Long = Head + string.Concat(Enumerable.Repeat("| C G/B Am Em | F C/E Dm7 G7 |\n", 6)) + "| C |]\n";

    // What several tests hold theirs against, made once.
    private static readonly Lazy<Drafting.Made> LongDraft = new(() => Assert.IsType<Drafting.Made>(Drafted(isLong: true, Deadline.None)));

    private static readonly Instrument Instrument = new(ShippedTowers.Default, ShippedSounds.Default);

    private static readonly CandidateSearch Listing = new(Instrument.Tower, Instrument.Reach, ShippedSounds.Default.RollStep);

    private static readonly SlotPlan LongPlan = PlanOf(RevoicingTests.Read("slack-tide.chords", Long));

    private static readonly Lazy<SheetPrices> Whole = new(() =>
        SheetPrices.Of(Instrument, ShippedSounds.Default, LongPlan, [.. LongPlan.Slots.Select(Listing.List)], CancellationToken.None));

    private static SlotPlan PlanOf(LeadSheet sheet) => SlotCutting.Cut(sheet, SheetTempi.Of(sheet));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_deadline_that_has_passed_leaves_no_draft_and_says_what_would_help(bool isLong)
    {
        var late = Assert.IsType<Drafting.OutOfTime>(Drafted(isLong, SteppedClock.Passed()));
        Assert.Contains("Slack Tide", late.Sentence, StringComparison.Ordinal);
        Assert.Contains("--time-limit", late.Sentence, StringComparison.Ordinal);
    }

    // The clock is first looked at when there is an answer, and then it is too late for anything more.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void An_answer_that_is_there_when_the_deadline_comes_is_taken_and_says_so(bool isLong)
    {
        using var deadline = Deadline.After(new SteppedClock(100), new Seconds(60));
        var made = Assert.IsType<Drafting.Made>(Drafted(isLong, deadline)).Arrangement;

        Assert.True(made.Status.WasCutShort);
        Assert.InRange(made.Status.Bound!.Value, 1, made.Status.Price);
        Assert.EndsWith("of the best possible; the time limit was reached", made.Status.ToString(), StringComparison.Ordinal);
        Assert.All(made.Choices, choice => Assert.Empty(choice.Alternatives));
        Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Strokes));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_deadline_that_does_not_come_changes_nothing(bool isLong)
    {
        using var deadline = Deadline.After(new SteppedClock(0), new Seconds(60));
        Assert.Equal(isLong ? LongDraft.Value : Drafted(isLong, Deadline.None), Assert.IsType<Drafting.Made>(Drafted(isLong, deadline)));
    }

    // What is said of each chord of a long piece is what is said with the prices of the whole at hand.
    [Fact]
    public void In_windows_price_and_alternatives_are_those_of_the_whole()
    {
        var (plan, sound, cancel) = (LongPlan, ShippedSounds.Default, TestContext.Current.CancellationToken);
        var rules = SoundRules.Of(sound);
        var search = new LongSearch(plan, new SlotPricing(Instrument, sound, plan), Listing.List, rules, ProofEffort.Quick, cancel, cancel);
        var (kept, outcome) = search.Best(long.MaxValue)!.Value;
        var found = Assert.IsType<Outcome.Found>(outcome);

        var whole = Whole.Value;
        int[] choice = [.. plan.Slots.Select(s => Number(s, found.Choice[s.Index]))];
        var book = RuleBook.For(rules, whole);
        var hindsight = new Hindsight(whole, rules, book, choice);
        Assert.True(plan.Slots.Count > SlotWindows.LongestWhole);
        Assert.True(book.Counters.AreKept(choice) && whole.CanBeMoved(choice));
        Assert.Equal(whole.Whole(choice), found.Price);
        Assert.InRange(found.Bound, 1, found.Price);
        Assert.All(plan.Slots, s => Assert.Equal(hindsight.Of(s), found.Slots[s.Index].Numbered(c => Number(s, c))));

        int Number(Slot slot, int c) => whole.Candidates(slot.Index).ToList().IndexOf(kept.Candidates(slot.Index)[c]);
    }

    // No slot can be changed for the better by itself but by what windows settle together.
    [Fact]
    public void In_windows_it_costs_hardly_more_than_with_all_prices_at_hand()
    {
        var atOnce = Assert.IsType<Outcome.Found>(
            Search.Run(Whole.Value, SoundRules.Of(ShippedSounds.Default), ProofEffort.Quick, TestContext.Current.CancellationToken));
        var made = LongDraft.Value.Arrangement;

        Assert.InRange(made.Status.Price / (double)atOnce.Price, 0.99, 1.01);
    }

    // The clock stands until every slot was listed once, for the first answer, and one again.
    [Fact]
    public void When_time_is_over_early_some_windows_are_searched_with_all_candidates_and_the_others_with_few()
    {
        var sheet = RevoicingTests.Read("slack-tide.chords", Head + string.Concat(Enumerable.Repeat("| C G/B Am Em | F C/E Dm7 G7 |\n", 22)) + "| C |]\n");
        var (sound, cancel) = (ShippedSounds.Default, TestContext.Current.CancellationToken);
        var instrument = new Instrument(ShippedTowers.Named("chapel-23"), sound);
        var plan = SlotCutting.Cut(sheet, SheetTempi.Of(sheet));
        var listing = new CandidateSearch(instrument.Tower, instrument.Reach, sound.RollStep);
        var rules = SoundRules.Of(sound);
        var (clock, listed) = (new SteppedClock(0), 0);
        using var deadline = Deadline.After(clock, new Seconds(60));
        Items<Candidate> List(Slot slot)
        {
            clock.MoveOn(Interlocked.Increment(ref listed) == plan.Slots.Count + 1 ? 100 : 0);
            return listing.List(slot);
        }

        var search = new WindowSearch(plan, new SlotPricing(instrument, sound, plan), List, rules, ProofEffort.Quick with { Deadline = deadline }, deadline.Token, cancel);
        var (kept, outcome) = search.Best(long.MaxValue)!.Value;
        var found = Assert.IsType<Outcome.Found>(outcome);

        var whole = SheetPrices.Of(instrument, sound, plan, [.. plan.Slots.Select(listing.List)], cancel);
        int[] choice = [.. plan.Slots.Select(s => whole.Candidates(s.Index).ToList().IndexOf(kept.Candidates(s.Index)[found.Choice[s.Index]]))];
        var book = RuleBook.For(rules, whole);
        Assert.InRange(listed, plan.Slots.Count + 1, (2 * plan.Slots.Count) - 1);
        Assert.True(found.WasCutShort);
        Assert.True(book.Counters.AreKept(choice) && whole.CanBeMoved(choice));
        Assert.All(plan.Slots, s => Assert.Contains(choice[s.Index], book.Allowed[s.Index]));
        Assert.Equal(whole.Whole(choice), found.Price);
        Assert.InRange(found.Bound, plan.Slots.Sum(s => whole.Alone(s.Index).ToArray().Min()), found.Price - 1);
    }

    private static Drafting Drafted(bool isLong, Deadline deadline) => Revoicing.Draft(
        RevoicingTests.Read("slack-tide.chords", isLong ? Long : Short),
        ShippedTowers.Default,
        ShippedSounds.Default,
        new DraftWish { Effort = ProofEffort.Quick with { Deadline = deadline } },
        null,
        TestContext.Current.CancellationToken);
}
