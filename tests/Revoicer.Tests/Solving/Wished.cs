using Revoicer.LeadSheets.Wishes;
using Revoicer.Solving.Rules;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>Wishes as their file has them.</summary>
internal static class Wished
{
    /// <summary>"[[pin]] bar = 2 bass = G3": blanks part the words of a line, a semicolon parts lines, texts need no quotes.</summary>
    public static PlayerWishes Of(string lines) =>
        Assert.IsType<Reading<PlayerWishes>.Accepted>(WishFile.Read("w.toml", Toml(lines), FigureNames.All)).Value;

    /// <summary>The same as rules.</summary>
    public static Items<Rule> Rules(string lines) => Of(lines).All.Select(w => (Rule)new WishRule(w)).ToItems();

    private static string Toml(string lines) => lines.Replace("; ", "\n", StringComparison.Ordinal) + "\n";
}
