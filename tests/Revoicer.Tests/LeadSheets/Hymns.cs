using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets;

/// <summary>The hymns in four voices, without chord symbols, of ../shared/corpora/hymns (Open Hymnal Project, public domain).</summary>
internal static class Hymns
{
    /// <summary>All of them by the names of their files; skips the test where they are absent.</summary>
    public static IReadOnlyList<(string Name, Passage Passage)> All()
    {
        var known = SharedFiles.Find("corpora", "hymns", "Abide_With_Me-Eventide.abc");
        Assert.SkipWhen(known is null, "../shared/corpora/hymns is absent");
        return [.. Directory.GetFiles(Path.GetDirectoryName(known)!, "*.abc").Order(StringComparer.Ordinal).Select(Read)];
    }

    private static (string, Passage) Read(string file)
    {
        var name = Path.GetFileNameWithoutExtension(file);
        var text = SheetBytes.Decode(File.ReadAllBytes(file)).Text;
        return (name, Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage(name, text, SheetChoice.First)).Value);
    }
}
