using Revoicer.Comparisons;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Comparisons;

public sealed class MeasureTests
{
    [Fact]
    public void The_least_clash_the_most_carry_and_all_equals_are_the_best()
    {
        SettingFigures[] drafts = [With(clash: 10, carry: 1), With(clash: 12, carry: 2), With(clash: 10, carry: 2)];
        Assert.Equal([0, 2], Measure.All.First(m => m.Name == Measure.ClashDose).Best(drafts));
        Assert.Equal([1, 2], Measure.All.First(m => m.Name == "carry").Best(drafts));
    }

    [Fact]
    public void What_is_shown_alike_is_equal()
    {
        SettingFigures[] drafts = [With(clash: 10.01, carry: 0), With(clash: 10.04, carry: 0), With(clash: 10.06, carry: 0)];
        Assert.Equal([0, 1], Measure.All.First(m => m.Name == Measure.ClashDose).Best(drafts));
    }

    [Fact]
    public void Where_all_are_alike_or_taste_decides_nothing_is_best()
    {
        SettingFigures[] alike = [SomeFigures.Figures, SomeFigures.Figures];
        Assert.All(Measure.All, m => Assert.Empty(m.Best(alike)));
        SettingFigures[] apart = [SomeFigures.Figures with { Rolls = 1, Strokes = 5 }, SomeFigures.Figures with { Rolls = 2, Strokes = 9 }];
        Assert.All(Measure.All, m => Assert.Empty(m.Best(apart)));
    }

    [Fact]
    public void What_has_no_figure_is_out_of_the_running()
    {
        SettingFigures?[] drafts = [null, SomeFigures.Figures with { Effort = 3 }, SomeFigures.Figures with { Effort = null }, SomeFigures.Figures with { Effort = 2 }];
        Assert.Equal([3], Measure.All.First(m => m.Name == "effort").Best(drafts));
    }

    [Fact]
    public void Clash_doses_of_several_fades_have_no_best()
    {
        Items<ComparedSetting> settings = [SomeFigures.At(0, 1) with { Figures = With(1, 0) }, SomeFigures.At(0, 1) with { Figures = With(2, 0) }];
        var dose = Measure.All.First(m => m.Name == Measure.ClashDose);
        Assert.Equal([0], new Comparison("Ebb", settings, []).Best(dose));
        Assert.Empty((new Comparison("Ebb", settings, []) with { HasOneFade = false }).Best(dose));
    }

    private static SettingFigures With(double clash, double carry) => SomeFigures.Figures with { ClashDose = clash, Carry = new Decibels(carry) };
}
