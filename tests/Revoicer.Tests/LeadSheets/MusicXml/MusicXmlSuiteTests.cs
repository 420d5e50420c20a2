using System.Globalization;
using System.Text;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.MusicXml;

/// <summary>
/// The MusicXML test suite of the LilyPond project (MIT licence), ../shared/corpora/musicxml-suite: every file is read, or
/// refused with a sentence that has a place.
/// </summary>
public sealed class MusicXmlSuiteTests
{
    [Fact]
    public void Every_file_is_read_or_refused_in_a_sentence()
    {
        var folder = Path.GetDirectoryName(SharedFiles.Find("corpora", "musicxml-suite", "01a-Pitches-Pitches.xml"));
        Assert.SkipWhen(folder is null, "../shared/corpora/musicxml-suite is absent");
        var table = new StringBuilder();
        var (read, refused, warned) = (0, 0, 0);
        foreach (var file in Directory.GetFiles(folder!).Order(StringComparer.Ordinal))
        {
            switch (MusicXmlReader.Read(Path.GetFileName(file), File.ReadAllBytes(file)))
            {
                case Reading<LeadSheet>.Accepted accepted:
                    read++;
                    warned += accepted.Warnings.Count > 0 ? 1 : 0;
                    table.Append(Line(Path.GetFileNameWithoutExtension(file), accepted));
                    break;
                case Reading<LeadSheet>.Refused bad:
                    refused++;
                    Assert.NotEmpty(bad.Problems);
                    Assert.All(bad.Problems, p => Assert.True(p.Found.Length > 0 && p.Expected.Length > 0 && p.Where is { Line: > 0, Column: > 0 }, p.ToString()));
                    table.Append(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(file)}: refused, {bad.Problems[0].Found}\n");
                    break;
            }
        }

        table.Append(CultureInfo.InvariantCulture, $"read: {read}, of these with warnings: {warned}; refused: {refused}\n");
        Expected.Text("musicxml-suite", table.ToString());
    }

    [Fact]
    public void Every_file_is_a_passage_or_refused_in_a_sentence()
    {
        var folder = Path.GetDirectoryName(SharedFiles.Find("corpora", "musicxml-suite", "01a-Pitches-Pitches.xml"));
        Assert.SkipWhen(folder is null, "../shared/corpora/musicxml-suite is absent");
        var table = new StringBuilder();
        foreach (var file in Directory.GetFiles(folder!).Order(StringComparer.Ordinal))
        {
            var name = Path.GetFileNameWithoutExtension(file);
            switch (MusicXmlReader.Passage(Path.GetFileName(file), File.ReadAllBytes(file)))
            {
                case Reading<Passage>.Accepted { Value: var passage }:
                    Assert.Equal(passage.Voices.Count, passage.Voices.Select(v => v.Name).Distinct().Count());
                    table.Append(CultureInfo.InvariantCulture, $"{name}: {string.Join("; ", passage.Voices.Select(v => $"{v.Name} {passage.Heard(v).Count}"))}\n");
                    break;
                case Reading<Passage>.Refused bad:
                    Assert.All(bad.Problems, p => Assert.True(p.Where is { Line: > 0, Column: > 0 }, p.ToString()));
                    table.Append(CultureInfo.InvariantCulture, $"{name}: refused, {bad.Problems[0].Found}\n");
                    break;
            }
        }

        Expected.Text("musicxml-suite-passages", table.ToString());
    }

    private static string Line(string name, Reading<LeadSheet>.Accepted read)
    {
        var (bars, notes) = (read.Value.Bars, HeardTune.Of(read.Value));
        var chords = bars.SelectMany(b => b.Chords).Count(c => c.Symbol is not null);
        var first = read.Warnings.Count > 0 ? $"; warned: {read.Warnings[0].Found}" : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: {bars.Count} bars, {read.Value.Played.Count} heard, {read.Value.Length} quarters, {notes.Count} notes, {chords} chords{first}\n");
    }
}
