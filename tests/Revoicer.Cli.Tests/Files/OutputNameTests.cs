using Revoicer.Cli.Files;
using Xunit;

namespace Revoicer.Cli.Tests.Files;

public sealed class OutputNameTests
{
    [Theory]
    [InlineData("first", "first")]
    [InlineData("first.mid", "first")]
    [InlineData("folder/first.JSON", "folder/first")]
    [InlineData("first.abc", "first.abc")]
    [InlineData(".", "./buoys")]
    [InlineData("..", "../buoys")]
    [InlineData("folder/", "folder/buoys")]
    [InlineData("folder/.", "folder/./buoys")]
    [InlineData(null, "buoys")]
    public void A_name_is_taken_as_it_is_and_a_folder_gets_the_sheets_name(string? asked, string name) =>
        Assert.Equal(name, OutputName.Of(asked, "sheets/buoys.chords"));

    [Theory]
    [InlineData(".abc", "untitled")]
    [InlineData("sheets/.musicxml", "untitled-draft")]
    public void A_sheet_without_a_name_hides_nothing(string sheet, string name) => Assert.Equal(name, OutputName.Of(null, sheet));

    [Theory]
    [InlineData("")]
    [InlineData(".mid")]
    [InlineData("folder/.txt")]
    public void An_ending_alone_leaves_no_name(string asked) => Assert.False(OutputName.LeavesName(asked));

    [Fact]
    public async Task Into_a_folder_nothing_hidden_is_written()
    {
        using var scratch = new Scratch();
        var sheet = scratch.Put("buoys.chords", "title: Two Buoys\ntime: 4/4\n| C ||\n");
        var ran = await Ran.Of("draft", sheet, "--out", scratch.At("") + "/.");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Equal(["buoys.chords", "buoys.json", "buoys.mid", "buoys.musicxml", "buoys.txt"], scratch.Names());
    }
}
