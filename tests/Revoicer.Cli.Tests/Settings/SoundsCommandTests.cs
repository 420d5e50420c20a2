using Revoicer.Sounds;
using Xunit;

namespace Revoicer.Cli.Tests.Settings;

public sealed class SoundsCommandTests : IDisposable
{
    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    public static TheoryData<string> Names => [.. ShippedSounds.Names];

    [Fact]
    public async Task All_that_ship_are_listed_with_what_they_are_for()
    {
        var ran = await Ran.Of("sounds");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Equal(
            """
            bright: Light and high, with few clashes: every other strong beat may go without a bass bell, and
              carrying far matters little.

            balanced: Between bright and full: a bass bell on most strong beats, clear chords above it.

            full: Low bass bells and chords that carry far, at the price of more clash.

            A draft is made in the sound balanced unless another is named:
              revoicer draft SHEET --sound bright

            To make your own sound, print one that is like it into a file, change that, and have it checked:
              revoicer sounds balanced --print > own.toml
              revoicer sounds own.toml
              revoicer draft SHEET --sound own.toml
            docs/sounds.md says of every word what raising it does.

            """,
            ran.Output);
    }

    [Fact]
    public async Task Every_weight_is_shown_with_its_unit_and_meaning()
    {
        var ran = await Ran.Of("sounds", "balanced");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("This sound is balanced, which ships.\n\nbalanced\n========\n\nPrices are in clash units: ", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\n[tones]\n  root = 75 clash units: leaving out the root\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\n  fade = 1.16 s: how fast attention leaves a stroke", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith("\n[effort]\n  weight = 1, a factor: on the effort of hands and feet\n", ran.Output, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_pattern_is_the_shipped_file_and_can_be_read(string name)
    {
        var printed = await Ran.Of("sounds", name, "--print");
        Assert.Equal(new Ran(0, ShippedSounds.Text(name), ""), printed);
        var own = _scratch.Put("own.toml", printed.Output);
        Assert.StartsWith($"This sound is the file {own}.\n\n{name}\n", (await Ran.Of("sounds", own)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_problems_of_a_file_are_told_with_their_places()
    {
        var file = _scratch.Put("own.toml", ShippedSounds.Text("balanced").Replace("fifth = 10", "fifth = -1\nsixt = 3", StringComparison.Ordinal));
        var ran = await Ran.Of("sounds", file);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Equal(
            $"""
            {file}:13:9: 'fifth' is -1; expected a number from 0 to 1000
                fifth = -1
                        ^^
            {file}:14:1: 'sixt' is no word of this part; expected one of root, third, seventh, fifth, colour, low-third, doubled, bells, thin, bare-hands
                sixt = 3
                ^^^^

            """,
            ran.Error);
    }

    [Fact]
    public async Task What_cannot_be_found_is_said_in_a_sentence() => Assert.Equal(
        new Ran(2, "", "dull: no sound of that name ships, and there is no such file; expected one of bright, balanced, full, or a file\n"),
        await Ran.Of("sounds", "dull"));

    [Fact]
    public async Task Help_shows_an_example() =>
        Assert.Contains("Example: revoicer sounds bright", (await Ran.Of("sounds", "--help")).Output, StringComparison.Ordinal);
}
