using System.Text.Json;
using Revoicer.Sounds;
using Xunit;

namespace Revoicer.Cli.Tests.Comparisons;

public sealed class TradeOffCommandTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task One_sound_is_laid_out_by_carry_with_what_each_draft_gives_up_and_nothing_is_written()
    {
        var ran = await TradeOff();
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("Two Buoys: 3 chords as heard\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\nsound: balanced, but for carry", ran.Output, StringComparison.Ordinal);
        Assert.Matches("\nas it is +-", ran.Output);
        Assert.Matches(@"\n\d+ beside \d+: \d of 3 chords taken otherwise; ", ran.Output);
        Assert.Equal(["buoys.chords"], _scratch.Names());
        Assert.Equal(ran, await TradeOff());
    }

    /// <summary>Every point can be had again: its sound, drafted, comes to the same figures.</summary>
    [Fact]
    public async Task The_sounds_written_make_the_drafts_again()
    {
        var folder = Directory.CreateDirectory(_scratch.At("points")).FullName;
        var ran = await TradeOff("--write-sounds", folder, "--json", "--sound", "bright");
        Assert.Equal(0, ran.ExitCode);
        using var json = JsonDocument.Parse(ran.Output);
        var points = json.RootElement.GetProperty("points").EnumerateArray().ToArray();
        string[] files = [.. Directory.GetFiles(folder).Order(StringComparer.Ordinal)];
        Assert.Equal(points.Select((_, i) => $"buoys-{i + 1:00}.toml"), files.Select(f => Path.GetFileName(f)));
        Assert.Equal(files.Select(f => $"wrote {f}\n"), ran.Error.Split('\n').SkipLast(1).Select(line => line + "\n"));
        foreach (var (point, file) in new[] { (points[0], files[0]), (points[^1], files[^1]) })
        {
            Assert.Equal(0, (await Ran.Of("sounds", file)).ExitCode);
            Assert.Equal(0, (await Ran.Of("draft", _scratch.At("buoys.chords"), "--sound", file, "--out", _scratch.At("again"), "--force")).ExitCode);
            using var again = JsonDocument.Parse(File.ReadAllText(_scratch.At("again.json")));
            Assert.Equal(
                point.GetProperty("figures").GetProperty("clashDose").GetDouble(),
                again.RootElement.GetProperty("totals").GetProperty("clashDose").GetDouble(),
                9);
            Assert.Equal(point.GetProperty("figures").GetProperty("price").GetInt64(), again.RootElement.GetProperty("totals").GetProperty("price").GetInt64());
        }
    }

    [Fact]
    public async Task What_was_written_is_not_replaced_unless_asked_and_then_nothing_is_written()
    {
        var folder = Directory.CreateDirectory(_scratch.At("points")).FullName;
        File.WriteAllText(Path.Combine(folder, "buoys-02.toml"), "mine");
        var ran = await TradeOff("--write-sounds", folder);
        Assert.Equal(3, ran.ExitCode);
        Assert.Contains("buoys-02.toml exists already", ran.Error, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(folder));
        Assert.Equal(0, (await TradeOff("--write-sounds", folder, "--force")).ExitCode);
        Assert.NotEqual("mine", File.ReadAllText(Path.Combine(folder, "buoys-02.toml")));
    }

    [Theory]
    [InlineData("--trade-off lays the drafts of one sound, on one tower, in one layout and key side by side; name one of each", "--sound", "bright", "--sound", "full")]
    [InlineData("name one of each", "--keys", "0..1")]
    [InlineData("name one of each", "--tower", "harbour-47", "--tower", "chapel-23")]
    [InlineData("--trade-off says what each of its drafts gives up; leave out --chords, --bar and --plain, or --trade-off", "--chords")]
    [InlineData("leave out --chords, --bar and --plain", "--bar", "1")]
    [InlineData("leave out --chords, --bar and --plain", "--plain")]
    [InlineData("--write-sounds: there is no folder nowhere to put the sounds into; make it, or name another", "--write-sounds", "nowhere")]
    [InlineData("no sound of that name ships", "--sound", "dull")]
    public async Task What_was_typed_wrong_is_said_in_a_sentence(string sentence, params string[] options)
    {
        var ran = await TradeOff(options);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sounds_are_written_only_of_a_trade_off()
    {
        var ran = await Ran.Of("compare", _scratch.Put("buoys.chords", Sheet), "--write-sounds", _scratch.At(""));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("--write-sounds writes the sounds of a trade-off; add --trade-off, or leave it out", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wish_for_no_place_is_wrong_usage_and_one_that_cannot_be_met_is_told()
    {
        var astray = await TradeOff("--wishes", _scratch.Put("astray.toml", "[[pin]]\nbar = 9\nfigure = \"rolled\"\n"));
        Assert.Equal((2, ""), (astray.ExitCode, astray.Output));
        Assert.Contains("astray.toml:2:", astray.Error, StringComparison.Ordinal);
        var unmet = await TradeOff("--wishes", _scratch.Put("unmet.toml", "[[pin]]\nbar = 1\nbass = \"C#3\"\n"));
        Assert.Equal((1, ""), (unmet.ExitCode, unmet.Output));
        Assert.Contains("unmet.toml:3:8: bar 1: the bass on C#3 cannot be had", unmet.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_drawn_as_SVG_and_PNG()
    {
        var ran = await TradeOff("--pictures", "--out", _scratch.At("drawn"));
        Assert.SkipWhen(ran.Error.Contains("cannot be lettered", StringComparison.Ordinal), "no font is installed that the pictures can be lettered with");
        Assert.Equal(0, ran.ExitCode);
        Assert.EndsWith($"wrote {_scratch.At("drawn-trade-off.svg")}\nwrote {_scratch.At("drawn-trade-off.png")}\n", ran.Output, StringComparison.Ordinal);
    }

    // Its own rule on carry takes the place of that of the sound named, and its price is put aside.
    [Fact]
    public async Task A_sound_with_a_rule_of_its_own_gives_the_same_drafts()
    {
        var own = _scratch.Put("own.toml", ShippedSounds.Text("balanced").Replace("at-least = -60", "at-least = 1", StringComparison.Ordinal).Replace("shortfall = 2 ", "shortfall = 9 ", StringComparison.Ordinal));
        using var one = JsonDocument.Parse((await TradeOff("--json")).Output);
        using var other = JsonDocument.Parse((await TradeOff("--json", "--sound", own)).Output);
        Assert.Equal(one.RootElement.GetProperty("points").GetRawText(), other.RootElement.GetProperty("points").GetRawText());
    }

    private Task<Ran> TradeOff(params string[] options) => Ran.Of(["compare", _scratch.Put("buoys.chords", Sheet), "--trade-off", .. options]);
}
