using Revoicer.Comparisons;

namespace Revoicer.Writing.Text;

/// <summary>One line of a comparison's table.</summary>
/// <param name="Compared">The setting.</param>
/// <param name="Figures">What is shown of it; null where there is no draft.</param>
/// <param name="IsPlain">Whether these are the figures of the plain hand.</param>
internal sealed record ComparisonRow(ComparedSetting Compared, SettingFigures? Figures, bool IsPlain)
{
    public Setting Setting => Compared.Setting;
}
