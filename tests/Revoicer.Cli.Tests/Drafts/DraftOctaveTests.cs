using Xunit;

namespace Revoicer.Cli.Tests.Drafts;

/// <summary>--octave, for draft, revoice and compare alike.</summary>
public sealed class DraftOctaveTests : IDisposable
{
    private const string Tune = "X:1\nT:Ebb\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"C E G2|\"F\"A2 F2|\"G7\"G F D2|\"C\"C4|]\n";
    private const string Chords = "title: Two Buoys\nkey: C\ntime: 4/4\n| C | G7 | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("0", "in its written octave")]
    [InlineData("+1", "an octave higher than written")]
    [InlineData("-1", "an octave lower than written")]
    public async Task A_draft_says_where_the_tune_lies_and_what_the_other_octaves_would_cost(string octave, string where)
    {
        var ran = await Ran.Of("draft", _scratch.Put("ebb.abc", Tune), "--out", _scratch.At("first"), "--octave", octave);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Matches($@"\ntune: {where}\. ([A-Z2][a-z ]+ the draft (would cost at least [0-9.]+ more|may cost less, by [0-9.]+ at most)\.( |\n)){{3}}", ran.Output);
        var reasons = File.ReadAllText(_scratch.At("first.txt"));
        Assert.Contains($"\nTune         {where}; with itself it clashes ", reasons, StringComparison.Ordinal);
        Assert.Contains("\nOctaves      ", reasons, StringComparison.Ordinal);
        Assert.Contains($"- the tune {where}\n", reasons, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("draft")]
    [InlineData("compare")]
    public async Task A_sheet_without_a_tune_has_none_to_move(string command)
    {
        var sheet = _scratch.Put("buoys.chords", Chords);
        var ran = await Ran.Of(command, sheet, "--octave", "-1");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.EndsWith($"{sheet}: there is no tune on this sheet, so --octave has nothing to move; leave it out, or give a sheet with a tune (an .abc file)\n", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Theory]
    [InlineData("3")]
    [InlineData("-3")]
    [InlineData("up")]
    [InlineData("1.5")]
    [InlineData("")]
    public async Task Another_number_is_none(string octave)
    {
        foreach (var command in new[] { "draft", "compare", "revoice" })
        {
            var ran = await Ran.Of(command, _scratch.Put("ebb.abc", Tune), "--octave", octave);
            Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
            Assert.Contains($"--octave: '{octave}' is no octave to play the tune in; expected a whole number from -2 to 2, 0 for as written\n", ran.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Where_it_does_not_fit_those_that_do_are_named()
    {
        var high = _scratch.Put("high.abc", Tune.Replace("C4|]", "C2 g'2|]", StringComparison.Ordinal));
        var draft = await Ran.Of("draft", high, "--octave", "1", "--out", _scratch.At("first"));
        Assert.Equal((1, ""), (draft.ExitCode, draft.Output));
        Assert.EndsWith("does not have all its bells; it fits with --octave -1, 0\n", draft.Error, StringComparison.Ordinal);
        var compared = await Ran.Of("compare", high, "--octave", "1", "--sound", "bright");
        Assert.Equal(1, compared.ExitCode);
        Assert.Contains("it fits with --octave -1, 0\n", compared.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_comparison_and_music_voiced_anew_have_the_tune_there_too()
    {
        var (low, high) = (await Compared("-1"), await Compared("1"));
        Assert.Equal((0, 0), (low.ExitCode, high.ExitCode));
        Assert.NotEqual(low.Output, high.Output);

        var anew = await Ran.Of("revoice", _scratch.Put("ebb.abc", Tune), "--octave", "-1", "--stay-close", "1", "--out", _scratch.At("anew"));
        Assert.Equal((0, ""), (anew.ExitCode, anew.Error));
        Assert.Contains("\ntune: an octave lower than written. ", anew.Output, StringComparison.Ordinal);
        Assert.Contains("\"tuneOctaves\": -1,", File.ReadAllText(_scratch.At("anew.json")), StringComparison.Ordinal);
    }

    private Task<Ran> Compared(string octave) =>
        Ran.Of("compare", _scratch.Put("ebb.abc", Tune), "--octave", octave, "--sound", "bright", "--json");
}
