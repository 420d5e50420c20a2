using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Tests.Solving;
using Revoicer.Text;
using Revoicer.Voicings;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests;

/// <summary>The bass in tenths in whole drafts.</summary>
public class RevoicingInTenthsTests
{
    // A tune in quarter notes, two to a chord.
    private const string Ropes = """
        X:1
        T:Ropes and Rigging
        M:4/4
        L:1/4
        Q:1/4=84
        K:C
        "C"e g "F"a f | "G7"b d' "C"c' g | "Am"c' e' "Dm"f a | "G"g b "C"e2 |
        "F"a c' "C"g e | "Dm"f a "G7"g f | "C"e g "G7"d f | "C"e4 |]
        """;

    [Fact]
    public void Where_it_is_asked_for_the_bass_moves_a_tenth_under_the_tune()
    {
        // Here on F under A5 and C6.
        var made = Draft(3, DraftWish.None with { Wishes = Wished.Of("[[pin]]; bar = 5; beat = 1; figure = \"in tenths\"") });
        var choice = Assert.Single(made.Choices, c => c.Figure == FigureNames.Of(Figure.InTenths));
        Assert.Equal(("F", 5), (choice.Symbol, choice.Bar));
        Assert.Equal(["F3 0", "A3 1"], choice.Strokes.Where(s => s.IsPedal).Select(s => $"{s.Note} {s.Beat - choice.Start}"));
        Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Strokes));
        Assert.Contains("In tenths under the tune: F3 (left foot, 2 dB softer) on the beat, C5 (left hand) on the", RationaleText.Of(made), StringComparison.Ordinal);
        Assert.Equal(made, Assert.IsType<Reading<Arrangement>.Accepted>(ArrangementJson.Read("ropes.json", ArrangementJson.Write(made))).Value);
    }

    [Fact]
    public void Its_price_makes_it_rarer() => Assert.DoesNotContain(Draft(10).Choices, c => c.Figure == FigureNames.Of(Figure.InTenths));

    private static Arrangement Draft(double price) => Draft(price, DraftWish.None);

    private static Arrangement Draft(double price, DraftWish wish) => Assert.IsType<Drafting.Made>(Revoicing.Draft(
        RevoicingTests.Read("ropes.abc", Ropes),
        ShippedTowers.Default,
        ShippedSounds.Default with { InTenths = price },
        wish,
        null,
        CancellationToken.None)).Arrangement;
}
