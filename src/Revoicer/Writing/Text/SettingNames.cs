using Revoicer.Comparisons;

namespace Revoicer.Writing.Text;

/// <summary>Names the settings of a comparison by what they do not share.</summary>
internal static class SettingNames
{
    /// <summary>"bright", "bright, Merrowhaven Chapel, the tune below, in A major (+2)".</summary>
    public static string Of(Comparison comparison, ComparedSetting setting) =>
        WithoutKey(comparison, setting) + (comparison.HasKeys ? $", in {setting.Setting.KeyName}" : "");

    /// <summary>The same without the key.</summary>
    public static string WithoutKey(Comparison comparison, ComparedSetting setting)
    {
        var own = setting.Setting;
        var parts = new List<string> { own.Sound };
        if (Varies(s => s.Tower))
        {
            parts.Add(own.Tower);
        }

        if (Varies(s => s.Layout))
        {
            parts.Add($"the tune {own.Layout}");
        }

        return string.Join(", ", parts);

        bool Varies(Func<Setting, string?> what) => comparison.Settings.Any(s => what(s.Setting) != what(own));
    }
}
