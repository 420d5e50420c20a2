using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>The tunes of a hymn book, of which .ci/check_hymns.py compares every note with another reader's.</summary>
public class HymnTests
{
    [Fact]
    public void Every_hymn_is_read()
    {
        var known = SharedFiles.Find("corpora", "hymns", "Abide_With_Me-Eventide.abc");
        Assert.SkipWhen(known is null, "../shared/corpora/hymns is absent");
        var files = Directory.GetFiles(Path.GetDirectoryName(known)!, "*.abc");
        var sheets = files.Select(file => (Bytes: SheetBytes.Decode(File.ReadAllBytes(file)), Name: Path.GetFileName(file))).ToArray();
        var refused = sheets.SelectMany(s => AbcReader.Read(s.Name, s.Bytes.Text, SheetChoice.First) is Reading<LeadSheet>.Refused no ? no.Problems : []);

        Assert.Equal(70, sheets.Length);
        Assert.Equal(24, sheets.Count(s => !s.Bytes.IsUtf8));
        Assert.Empty(refused);
    }

    [Fact]
    public void Every_hymn_is_a_passage_of_four_voices()
    {
        var hymns = Hymns.All();
        Assert.Equal(70, hymns.Count);
        Assert.All(hymns, h => Assert.Equal(4, h.Passage.Voices.Count));
        Assert.All(hymns, h => Assert.All(h.Passage.Voices, v => Assert.True(v.HasNotes)));
    }
}
