using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.Pictures;
using Revoicer.Sounds;
using Revoicer.Tests.Audits;
using Revoicer.Values;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Pictures;

/// <summary>A clash figure is the same wherever it stands: in pictures, tables, bars and headlines.</summary>
public sealed class OneReadingTests
{
    private static readonly Revoicer.LeadSheets.LeadSheet Fog = Passages.Sheet(RepositoryFiles.All("leadsheets-demo", "fog-on-the-outer-pier.abc").Single());

    private static readonly Comparison Compared = Comparing.Of(
        Fog,
        new SettingChoices([ShippedTowers.Default], ShippedSounds.Names.Select(ShippedSounds.Named).ToItems(), [LayoutWish.Above], [0]),
        DraftWish.None,
        TimeProvider.System,
        null,
        TestContext.Current.CancellationToken);

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void The_pictures_and_the_table_of_a_bar_have_the_same_figures(int bar)
    {
        var table = ChordDifferencesText.OfBar(Compared, bar).ReplaceLineEndings(" ");
        table = string.Join(' ', table.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        var lines = ClashOverBars.Of(Compared)!.Lines;
        var withTune = 0;
        foreach (var (_, strips) in ChordStrips.InBar(Compared, _ => ShippedTowers.Default, bar))
        {
            foreach (var strip in strips.Strips)
            {
                var figure = strip.Title[(strip.Title.LastIndexOf("clash ", StringComparison.Ordinal) + "clash ".Length)..];
                Assert.Contains($" Clash {figure}.", table);
                withTune += figure.Contains("with the tune's own") ? 1 : 0;
                var line = lines.Single(l => strip.Title.StartsWith(l.Name + ":", StringComparison.Ordinal));
                Assert.Contains(line.Chords, c => figure.Split(' ')[0] == Sentences.Figure(c.Clash));
            }
        }

        Assert.True(withTune > 0, "the tune adds nothing anywhere, so one reading cannot be told from the other");
    }

    [Fact]
    public void The_headline_of_an_audit_is_the_median_of_its_chords_in_the_reading_of_its_bars()
    {
        var audit = Auditing.Of(Compared.Settings[1].Made!.Arrangement, ShippedTowers.Default, ShippedSounds.Default, cancel: TestContext.Current.CancellationToken);
        var (without, with) = (Median(audit.Chords.Select(c => c.Clash.Avoidable)), Median(audit.Chords.Select(c => c.Clash.Whole)));
        Assert.True(with > without, "the tune adds something");
        Assert.Equal(without, audit.Totals.MedianClash, 9);
        Assert.Equal(with, audit.Totals.MedianWithTune, 9);

        var text = string.Join(' ', AuditText.Of(audit).Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains($" {Sentences.Figure(without)} ({Sentences.Figure(with)} with the tune's own) for the middle one of all chords", text);
        Assert.All(audit.BarClashes, bar => Assert.Contains($"; clash {Sentences.Figure(bar.Clash.Avoidable)}", text));
    }

    private static double Median(IEnumerable<double> figures)
    {
        double[] sorted = [.. figures.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
