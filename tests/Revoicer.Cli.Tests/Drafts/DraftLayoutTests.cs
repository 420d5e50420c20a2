using Xunit;

namespace Revoicer.Cli.Tests.Drafts;

public sealed class DraftLayoutTests : IDisposable
{
    private const string Tune = "X:1\nT:Ebb\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"C E G2|\"F\"A2 F2|\"G7\"G F D2|\"C\"C4|]\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task The_tune_lies_above_unless_asked_otherwise()
    {
        var ran = await Draft();
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.DoesNotContain("layout:", ran.Output, StringComparison.Ordinal);
        var same = await Draft("--layout", "above");
        Assert.Equal(ran.Output, same.Output);
        Assert.Contains("\"tune\": \"above\"", File.ReadAllText(_scratch.At("first.json")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Below_lays_it_under_the_chords()
    {
        var ran = await Draft("--layout", "below");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains(", the tune below is the bass\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\"tune\": \"below\"", File.ReadAllText(_scratch.At("first.json")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Best_says_which_it_took()
    {
        var ran = await Draft("--layout", "best");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Matches("\nlayout: the tune above, price [0-9.]+ against [0-9.]+, the tune with itself counted\n", ran.Output);
    }

    [Fact]
    public async Task A_layout_that_cannot_be_played_is_told_with_a_remedy()
    {
        var wide = _scratch.Put("wide.abc", Tune.Replace("C4|]", "C2 g'2|]", StringComparison.Ordinal));
        var below = await Ran.Of("draft", wide, "--out", _scratch.At("wide"), "--layout", "below");
        Assert.Equal((1, ""), (below.ExitCode, below.Output));
        Assert.Contains("or --layout above, would do", below.Error, StringComparison.Ordinal);
        Assert.Equal(["wide.abc"], _scratch.Names());
        var best = await Ran.Of("draft", wide, "--out", _scratch.At("wide"), "--layout", "best");
        Assert.Contains("\nlayout: the tune above; with the tune elsewhere there is no draft, the reasons say why\n", best.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("below")]
    [InlineData("best")]
    public async Task A_sheet_without_a_tune_has_nothing_to_lay(string layout)
    {
        var sheet = _scratch.Put("buoys.chords", "title: Two Buoys\nkey: C\ntime: 4/4\n| C | G7 | C ||\n");
        var ran = await Ran.Of("draft", sheet, "--layout", layout, "--out", _scratch.At("first"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Equal($"{sheet}: there is no tune on this sheet, so --layout has nothing to lay anywhere; leave it out, or give a sheet with a tune (an .abc file)\n", ran.Error);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Theory]
    [InlineData("beside")]
    [InlineData("1")]
    [InlineData("")]
    public async Task Another_word_is_none(string word)
    {
        var ran = await Draft("--layout", word);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains($"--layout: '{word}' is no layout; expected above, below or best\n", ran.Error, StringComparison.Ordinal);
    }

    private Task<Ran> Draft(params string[] options) =>
        Ran.Of(["draft", _scratch.Put("ebb.abc", Tune), "--out", _scratch.At("first"), "--force", .. options]);
}
