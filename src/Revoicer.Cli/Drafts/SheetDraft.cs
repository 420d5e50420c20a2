using Revoicer.Arrangements;
using Revoicer.Cli.Options;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Solving;
using Revoicer.Values;

namespace Revoicer.Cli.Drafts;

/// <summary>What came of drafting one sheet as it was asked for.</summary>
/// <param name="Drafting">The draft, or why there is none.</param>
/// <param name="Wish">What was asked of it.</param>
/// <param name="BestKey">Where the best key was asked for, which one it is and why; else null.</param>
internal sealed record SheetDraft(Drafting Drafting, DraftWish Wish, string? BestKey)
{
    /// <summary>Drafts a sheet.</summary>
    /// <param name="sheet">The sheet, in the key asked for.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="taken">What it is made with.</param>
    /// <param name="more">What is asked besides; null for nothing.</param>
    /// <param name="deadline">When the best found so far is taken.</param>
    /// <param name="progress">Told the stages.</param>
    /// <param name="cancel">Stops the work.</param>
    public static SheetDraft Of(
        LeadSheet sheet, DraftRequest request, DraftSettings taken, Func<DraftWish, DraftWish>? more, Deadline deadline, ProgressLine progress, CancellationToken cancel)
    {
        var tempo = request.PerMinute is { } perMinute ? new Tempo(sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        var wish = new DraftWish(tempo, request.EaseTune)
        {
            Effort = (request.Prove ? ProofEffort.Thorough : ProofEffort.Quick) with { Deadline = deadline },
            Layout = request.Layout,
            Octave = request.Octave,
            Wishes = taken.Wishes,
            Another = request.Another,
            VaryRepeats = request.VaryRepeats,
        };
        wish = more?.Invoke(wish) ?? wish;
        var (drafting, bestKey) = request.Key is KeyWish.Best
            ? InBestKey(sheet, taken, wish, progress, cancel)
            : (Revoicing.Draft(sheet, taken.Tower.Value, taken.Sound.Value, wish, progress, cancel), null);
        return new SheetDraft(drafting, wish, bestKey);
    }

    // Where it can be played in no key, what stands against the written one is told.
    private static (Drafting Drafting, string? BestKey) InBestKey(
        LeadSheet sheet, DraftSettings taken, DraftWish wish, ProgressLine progress, CancellationToken cancel)
    {
        var choices = new SettingChoices([taken.Tower.Value], [taken.Sound.Value], [wish.Layout], Comparing.FullRound);
        var comparison = Comparing.Of(sheet, choices, wish, TimeProvider.System, new CountLine(progress, choices.Count, "keys"), cancel);
        if (comparison.Advice is not [{ Chosen.Made: { } made } advice])
        {
            return (comparison.Settings.First(s => s.Setting.Semitones == 0).Drafting, null);
        }

        var arrangement = made.Arrangement;
        var best = $"the best of {choices.Count}, {advice.Chosen.Setting.KeyName}: {advice.Grounds}";
        return (made with { Arrangement = arrangement with { Wishes = arrangement.Wishes.Append($"a key that suits the tower, {best}").ToItems() } }, best);
    }
}
