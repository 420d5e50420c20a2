using Revoicer.Comparisons;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Text;

namespace Revoicer.Pictures;

/// <summary>What a sheet costs and clashes in several keys: a panel for every tower, sound and layout.</summary>
/// <param name="Panels">The panels; at least one, no more than <see cref="MostPanels"/>.</param>
/// <param name="LeftOut">How many have no panel.</param>
public sealed record KeyChart(Items<KeyPanel> Panels, int LeftOut)
{
    /// <summary>How many panels one sheet of paper holds.</summary>
    public const int MostPanels = 4;

    /// <summary>The chart of a comparison; null where there are not several keys, or no draft in any.</summary>
    public static KeyChart? Of(Comparison comparison)
    {
        if (!comparison.HasKeys || comparison.Settings.All(s => s.Figures is null))
        {
            return null;
        }

        var recommended = comparison.Advice.Select(a => a.Chosen).ToHashSet(ReferenceEqualityComparer.Instance);
        var panels = comparison.Settings
            .GroupBy(s => (s.Setting.Tower, s.Setting.Sound, s.Setting.Layout))
            .Select(group => new KeyPanel(
                VisibleText.OneLine(SettingNames.WithoutKey(comparison, group.First())),
                group.Select(s => BarOf(s, recommended.Contains(s))).ToItems()))
            .ToArray();
        return new KeyChart(panels.Take(MostPanels).ToItems(), Math.Max(0, panels.Length - MostPanels));
    }

    private static KeyBar BarOf(ComparedSetting setting, bool isRecommended) => new(
        setting.Setting.Key?.Tonic.ToString(),
        setting.Setting.Signed,
        setting.Figures is { } figures ? figures.Price / 1000.0 : null,
        setting.Figures?.ClashDose,
        setting.Fit.WithPedal == setting.Fit.Basses,
        isRecommended);
}
