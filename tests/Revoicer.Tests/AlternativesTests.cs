using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Tests.Solving;
using Xunit;

namespace Revoicer.Tests;

/// <summary>What the reasons say another voicing would cost is what it costs when the player asks for it.</summary>
public sealed class AlternativesTests
{
    [Theory]
    [InlineData("fog-on-the-outer-pier.abc", 3)]
    [InlineData("ferry-waltz.chords", 17)]
    [InlineData("lamps-on-the-quay.chords", 13)]
    [InlineData("round-the-breakwater.abc", 14)]
    public void An_alternative_that_is_asked_for_never_costs_more_than_the_reasons_say(string file, int every)
    {
        var sheet = RevoicingTests.Read(file, RepositoryFiles.Text("leadsheets-demo", file));
        var plain = DemoDrafts.Of(file);
        var asked = 0;

        Assert.All(plain.Choices.Where(c => c.Pass == 1).Where((_, i) => i % every == 0), choice =>
        {
            Assert.Equal(choice.Alternatives.OrderBy(a => a.CostsMore), choice.Alternatives);
            Assert.All(choice.Alternatives, alternative => Assert.True(alternative.CostsMore >= 0));
            if (choice.Alternatives.Count == 0)
            {
                return;
            }

            var alternative = choice.Alternatives[asked++ % choice.Alternatives.Count];
            var pinned = Made(sheet, DraftWish.None with { Wishes = Wished.Of(Pin(choice, alternative)) });
            Assert.InRange(pinned.Totals.Price, plain.Totals.Price, plain.Totals.Price + alternative.CostsMore);
        });
        Assert.True(asked > 0);
    }

    private static string Pin(Choice choice, Alternative alternative)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"[[pin]]; bar = {choice.Bar}; beat = {choice.Beat:0.##}; figure = \"{alternative.Figure}\"");
        return alternative.Notes.Count == 0 ? at : $"{at}; bells = [{string.Join(", ", alternative.Notes.Select(n => $"\"{n}\""))}]";
    }

    private static Arrangement Made(LeadSheet sheet, DraftWish wish) => Assert.IsType<Drafting.Made>(
        Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, wish, null, TestContext.Current.CancellationToken)).Arrangement;
}
