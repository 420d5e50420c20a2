using System.Globalization;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Sounds;

public sealed class SoundWordsTests
{
    public static TheoryData<string> Names => [.. ShippedSounds.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_a_sound_shows_is_what_its_file_says(string name)
    {
        var sound = ShippedSounds.Named(name);
        var part = "";
        var said = new List<(string, string, double)>();
        foreach (var line in ShippedSounds.Text(name).Split('\n'))
        {
            part = line.StartsWith('[') ? line[1..line.IndexOf(']', StringComparison.Ordinal)] : part;
            if (part.Length > 0 && line.Split('#')[0].Split('=') is [var word, var number])
            {
                said.Add((part, word.Trim(), double.Parse(number, CultureInfo.InvariantCulture)));
            }
        }

        Assert.Equal(said, SoundWords.All.Select(w => (w.Part, w.Word, w.Value(sound))));
    }

    [Fact]
    public void Every_word_has_its_line_where_a_sound_is_shown()
    {
        var lines = SoundText.Of(ShippedSounds.Default).Split('\n');
        var words = lines.Where(l => l.StartsWith("  ", StringComparison.Ordinal) && l[2] != ' ').Select(l => l.Trim().Split(" = ")[0]);
        Assert.Equal(SoundWords.All.Select(w => w.Word), words);
        Assert.All(lines, line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void The_document_explains_every_word_as_the_program_does()
    {
        var rows = RepositoryFiles.Text("docs", "sounds.md").Split('\n').Where(l => l.StartsWith("| `[", StringComparison.Ordinal)).ToArray();
        Assert.Equal(
            SoundWords.All.Select(w => $"| `[{w.Part}]` `{w.Word}` | {w.Unit} | {w.Meaning} | "),
            rows.Select(row => row[..(row[..^2].LastIndexOf("| ", StringComparison.Ordinal) + 2)]));
        Assert.All(rows, row => Assert.NotEqual("", row.Split('|')[4].Trim()));
    }

    [Fact]
    public void The_document_of_files_counts_and_names_the_parts()
    {
        var text = RepositoryFiles.Text("docs", "files.md");
        var parts = SoundWords.All.Select(w => w.Part).Distinct().ToArray();
        Assert.Equal((10, 51), (parts.Length, SoundWords.All.Length));
        Assert.Contains("a TOML file of ten parts and fifty-one numbers", text, StringComparison.Ordinal);
        Assert.All(parts.Where(p => p is not "clash"), p => Assert.Contains($"`[{p}]`", text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_first_line_that_is_a_comment_is_what_a_file_says_of_itself()
    {
        Assert.All(ShippedSounds.Names, name => Assert.EndsWith(".", ShippedSounds.About(name), StringComparison.Ordinal));
        Assert.Equal("Quay bells.", LeadingComment.Of("# Quay bells.\n# More.\nname = 1\n"));
        Assert.Equal("", LeadingComment.Of("name = 1 # no\n# Quay bells.\n"));
        Assert.Equal("", LeadingComment.Of(""));
    }
}
