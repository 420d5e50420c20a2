using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Playing;
using Revoicer.Sounds;

namespace Revoicer.Benchmarks;

/// <summary>Prints, as a table for docs/playing.md, what each sheet comes to with its tune above and below the chords.</summary>
internal static class LayoutReport
{
    public static int Print(IEnumerable<string> sheets)
    {
        Console.WriteLine("| the tune | price | clash of the chords | median | clash of the tune with itself |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (var file in sheets)
        {
            if (SheetFiles.Read(file) is not { } sheet)
            {
                return 2;
            }

            foreach (var layout in new[] { LayoutWish.Above, LayoutWish.Below })
            {
                var wish = DraftWish.None with { Layout = layout };
                var drafting = Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, wish, null, CancellationToken.None);
                Console.WriteLine(drafting is Drafting.Made { Arrangement: { Layout: { } chosen } made }
                    ? Row(made, chosen)
                    : $"| {sheet.Title}, {layout.ToString().ToLowerInvariant()} | cannot be played | | | |");
            }
        }

        return 0;
    }

    private static string Row(Arrangement made, ChosenLayout layout) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {made.Title}, {TuneLayoutNames.Of(layout.Tune)} | {layout.Price / 1000.0:0.0} | {made.Totals.ClashDose:0.0} | {made.Totals.MedianClash:0.0} | {made.Totals.TuneDose:0.0} |");
}
