using Revoicer.Cli.Files;
using Xunit;

namespace Revoicer.Cli.Tests.Files;

public sealed class PassageFileTests : IDisposable
{
    private const string Tunes = "X:1\nM:4/4\nL:1/4\nK:C\nV:S\nc4|]\nV:B\nC4|]\n\nX:2\nM:4/4\nL:1/4\nK:C\nV:S\nd4|]\n";
    private const string Part = "<measure number=\"1\"><note><pitch><step>C</step><octave>4</octave></pitch><duration>4</duration></note></measure>";

    private readonly Scratch _folder = new();
    private readonly StringWriter _error = new();

    public void Dispose()
    {
        _folder.Dispose();
        _error.Dispose();
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 1)]
    public void An_abc_file_gives_all_voices_of_the_tune_asked_for(int piece, int voices)
    {
        Assert.Equal(voices, PassageFile.Read(_folder.Put("quay.ABC", Tunes), piece, _error)!.Voices.Count);
        Assert.Empty(_error.ToString());
    }

    [Fact]
    public void A_score_gives_all_its_parts()
    {
        var score = $"<score-partwise><part-list/><part id=\"P1\">{Part}</part><part id=\"P2\">{Part}</part></score-partwise>";
        Assert.Equal(2, PassageFile.Read(_folder.Put("quay.xml", score), null, _error)!.Voices.Count);
        Assert.StartsWith("warning: ", _error.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("quay.chords", "not a kind of file that holds a passage")]
    [InlineData("quay.abc", "the file has no tune")]
    [InlineData("quay.musicxml", "the file is no whole XML document")]
    public void What_is_no_passage_is_told(string name, string sentence)
    {
        Assert.Null(PassageFile.Read(_folder.Put(name, "fog\n"), null, _error));
        Assert.Contains(sentence, _error.ToString(), StringComparison.Ordinal);
    }
}
