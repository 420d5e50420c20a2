using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.LeadSheets;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer;

/// <summary>Drafts a sheet under several settings, to choose among them.</summary>
public static class Comparing
{
    /// <summary>The keys of a full round, in semitones from the written one: no key lies farther off than half an octave.</summary>
    public static Items<int> FullRound { get; } = Enumerable.Range(-5, 12).ToItems();

    // A draft in the making may take half a gigabyte.
    internal const int MostAtOnce = 4;

    /// <summary>Drafts the sheet on every tower, in every sound, layout and key; that order, keys first to last innermost.</summary>
    /// <param name="sheet">The sheet as written.</param>
    /// <param name="choices">What is combined.</param>
    /// <param name="wish">What else the player asks of each; its layout is not looked at.</param>
    /// <param name="clock">By which the drafts are timed.</param>
    /// <param name="progress">Told how many drafts are done; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    public static Comparison Of(
        LeadSheet sheet, SettingChoices choices, DraftWish wish, TimeProvider clock, IProgress<int>? progress, CancellationToken cancel)
    {
        var layouts = sheet.HasTune ? choices.Layouts : [LayoutWish.Above];
        var asked =
            (from tower in choices.Towers
             from sound in choices.Sounds
             from layout in layouts
             from semitones in choices.Keys
             select (Tower: tower, Sound: sound, Layout: layout, Semitones: semitones)).ToArray();
        var settings = new ComparedSetting[asked.Length];
        var done = 0;
        var cores = new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = MostAtOnce };
        Parallel.For(0, asked.Length, cores, i =>
        {
            var (tower, sound, layout, semitones) = asked[i];
            settings[i] = Draft(sheet, tower, sound, semitones, wish with { Layout = layout }, clock, cancel);
            progress?.Report(Interlocked.Increment(ref done));
        });
        var advice = choices.Keys.Count < 2
            ? []
            : settings.Chunk(choices.Keys.Count).Select(KeyAdvice.Of).OfType<KeyAdvice>().ToItems();
        return new Comparison(sheet.Title, settings.ToItems(), advice)
        {
            HasOneFade = choices.Sounds.Select(s => s.Fade).Distinct().Count() == 1,
            Unheard = sheet.Unheard,
        };
    }

    /// <summary>One draft with its figures.</summary>
    internal static ComparedSetting Draft(
        LeadSheet sheet, Tower tower, Sound sound, int semitones, DraftWish wish, TimeProvider clock, CancellationToken cancel)
    {
        var began = clock.GetTimestamp();
        var moved = semitones == 0 ? sheet : sheet.Higher(semitones);
        var drafting = Revoicing.Draft(moved, tower, sound, wish, null, cancel);
        var made = drafting as Drafting.Made;
        return new ComparedSetting(
            new Setting(tower.Name, sound.Name, semitones, moved.Key, sheet.HasTune ? WordOf(wish.Layout) : null),
            KeyFit.Of(moved, tower, LayoutsOf(wish.Layout), wish.Octave),
            drafting)
        {
            Figures = made is null ? null : SettingFigures.Of(made, sound),
            PlainHand = made?.PlainHand is { } plain ? SettingFigures.Of(plain) : null,
            PlainHandBreaches = made?.PlainHand is { } taken ? new Checker(tower).Check(taken.Strokes).Count(b => !b.InTune) : 0,
            Took = new Seconds(clock.GetElapsedTime(began).TotalSeconds),
        };
    }

    private static TuneLayout[] LayoutsOf(LayoutWish wish) => wish switch
    {
        LayoutWish.Above => [TuneLayout.Above],
        LayoutWish.Below => [TuneLayout.Below],
        _ => [TuneLayout.Above, TuneLayout.Below],
    };

    private static string WordOf(LayoutWish wish) => wish == LayoutWish.Best ? "best" : TuneLayoutNames.Of(LayoutsOf(wish)[0]);
}
