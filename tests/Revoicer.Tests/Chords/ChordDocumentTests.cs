using Revoicer.Chords;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Chords;

/// <summary>docs/chord-symbols.md says what the reader does.</summary>
public class ChordDocumentTests
{
    [Fact]
    public void Every_choice_in_the_table_of_contested_suffixes_is_what_is_read()
    {
        var rows = Section("## Contested suffixes")
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Where(c => c.Length == 6 && c[1].StartsWith('`'))
            .ToArray();
        Assert.Equal(71, rows.Length);
        foreach (var row in rows)
        {
            // On E, since an accidental after it would be the root's.
            var (suffix, ours) = (row[1].Trim('`'), row[3].Trim('`'));
            switch (ours)
            {
                case "refused":
                    Assert.IsType<Reading<ChordText>.Refused>(SymbolText.Read("E" + suffix));
                    break;
                case "another root":
                    Assert.Equal("Eb", SymbolText.Chord("E" + suffix).Root.ToString());
                    break;
                default:
                    Assert.Equal(ours, SymbolText.Degrees("E" + suffix));
                    break;
            }
        }
    }

    [Fact]
    public void What_the_document_calls_refused_is_refused()
    {
        var examples = Section("## Refused")
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Where(c => c.Length == 4)
            .SelectMany(c => c[2].Split(", "))
            .Where(e => e.StartsWith('`') && e.EndsWith('`'))
            .Select(e => e.Trim('`'))
            .ToArray();
        Assert.True(examples.Length > 15);
        Assert.All(examples, e => Assert.IsType<Reading<ChordText>.Refused>(SymbolText.Read(e)));
    }

    private static IEnumerable<string> Section(string title) => RepositoryFiles.Text("docs", "chord-symbols.md")
        .Split('\n')
        .SkipWhile(l => l != title)
        .Skip(1)
        .TakeWhile(l => !l.StartsWith("## ", StringComparison.Ordinal));
}
