using System.Diagnostics;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Sounds;

namespace Revoicer.Benchmarks;

/// <summary>Prints for each sheet how many slots and candidates it has, how long each stage takes, and what the draft is like.</summary>
internal static class DraftReport
{
    private const int WarmRuns = 5;

    public static int Print(IEnumerable<string> sheets)
    {
        foreach (var file in sheets)
        {
            if (SheetFiles.Read(file) is not { } sheet)
            {
                return 2;
            }

            Console.WriteLine($"{sheet.Title} ({file})");
            PrintSize(sheet);
            PrintStages(sheet);
        }

        return 0;
    }

    private static void PrintSize(LeadSheet sheet)
    {
        var (plan, candidates) = ListedSheet.Of(sheet);
        var counts = candidates.Select(c => c.Count).Order().ToArray();
        Console.WriteLine($"  slots {plan.Slots.Count}, heard {plan.InTime().Count()}; candidates a slot: median {counts[counts.Length / 2]}, largest {counts[^1]}");
    }

    private static void PrintStages(LeadSheet sheet)
    {
        var first = new StageTimes();
        var draft = Draft(sheet, first);
        var warm = Enumerable.Range(0, WarmRuns).Select(_ => new StageTimes()).ToArray();
        foreach (var times in warm)
        {
            Draft(sheet, times);
        }

        foreach (var stage in Enum.GetValues<Stage>())
        {
            var sorted = warm.Select(w => w.Of(stage)).Order().ToArray();
            Console.WriteLine(FormattableString.Invariant($"  {stage,-11} first {first.Of(stage),6:0} ms, warm {sorted[WarmRuns / 2],6:0} ms"));
        }

        var choices = draft.Choices;
        Console.WriteLine(FormattableString.Invariant(
            $"  clash dose {draft.Totals.ClashDose:0.0}, median clash {draft.Totals.MedianClash:0.0}, {draft.Status}"));
        Console.WriteLine(FormattableString.Invariant(
            $"  root or slash bass lowest {draft.Totals.RootLowest:0.000}, three bells and more {choices.Count(c => Bells(c) >= 3) / (double)choices.Count:0.000}, bells a chord {choices.Average(Bells):0.00}"));
        var totals = draft.Totals;
        var strokes = draft.Strokes.Count(s => !s.IsTune);
        var roomy = choices.Where(c => draft.Tempi.At(c.Start + c.Length).Value - draft.Tempi.At(c.Start).Value >= 1).ToArray();
        Console.WriteLine(FormattableString.Invariant(
            $"  clash dose re close root {totals.ClashDose / totals.CloseRootDose:0.000}, re plain hand {totals.ClashDose / totals.PlainHandDose:0.000}; strokes re plain hand {strokes / (double)totals.PlainHandStrokes:0.000}"));
        Console.WriteLine(FormattableString.Invariant(
            $"  carry {totals.Carry}, brightness {totals.Brightness}, strong beats with a bass {totals.StrongBeats.Share:0.000}"));
        Console.WriteLine(FormattableString.Invariant(
            $"  two strokes and more in slots of 1 s and more {roomy.Count(c => c.Strokes.Count >= 2) / (double)roomy.Length:0.000}; tune {(draft.TuneOctaves is { } o ? $"{o:+0;-0;0} octaves, with itself {totals.TuneDose:0.0}" : "none")}"));
        var figures = choices.GroupBy(c => c.Figure).OrderByDescending(g => g.Count())
            .Select(g => FormattableString.Invariant($"{g.Key} {g.Count() / (double)choices.Count:0.000}"));
        Console.WriteLine($"  figures: {string.Join(", ", figures)}");
    }

    private static int Bells(Choice choice) => choice.Strokes.Select(s => s.Note).Distinct().Count();

    private static Arrangement Draft(LeadSheet sheet, StageTimes times)
    {
        var drafting = Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, times, CancellationToken.None);
        times.Stop();
        return ((Drafting.Made)drafting).Arrangement;
    }
}
