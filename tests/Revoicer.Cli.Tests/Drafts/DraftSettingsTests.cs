using Revoicer.Bells;
using Revoicer.Sounds;
using Xunit;

namespace Revoicer.Cli.Tests.Drafts;

public sealed class DraftSettingsTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task What_ships_is_taken_by_its_name_and_told()
    {
        var ran = await Draft("--tower", "great-56", "--sound", "full");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("Two Buoys: 3 chords voiced for Merrowhaven Great Tower, full\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\ntower: great-56, which ships; sound: full, which ships\n", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_word_it_is_the_default_of_both() => Assert.Contains(
        "\ntower: harbour-47, which ships; sound: balanced, which ships\n", (await Draft()).Output, StringComparison.Ordinal);

    [Fact]
    public async Task Files_of_ones_own_are_taken_told_and_left_as_they_are()
    {
        // Named as what ships, but with an ending: so the files are meant.
        var (towerText, soundText) = (Own(ShippedTowers.Text("chapel-23"), "Quay"), Own(ShippedSounds.Text("bright"), "airy"));
        var tower = _scratch.Put("harbour-47.toml", towerText);
        var sound = _scratch.Put("balanced.toml", soundText);
        var ran = await Draft("--tower", tower, "--sound", sound);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("Two Buoys: 3 chords voiced for Quay, airy\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains($"\ntower: the file {tower}; sound: the file {sound}\n", ran.Output, StringComparison.Ordinal);
        Assert.Equal((towerText, soundText), (File.ReadAllText(tower), File.ReadAllText(sound)));
    }

    [Theory]
    [InlineData("--tower", "chapel-23")]
    [InlineData("--sound", "bright")]
    public async Task No_input_is_ever_written_to(string option, string shipped)
    {
        var text = option == "--tower" ? ShippedTowers.Text(shipped) : ShippedSounds.Text(shipped);
        var own = _scratch.Put("first.json", text);
        var ran = await Draft(option, own, "--force");
        Assert.Equal(3, ran.ExitCode);
        Assert.Contains("first.json is an input of this run and is never written to", ran.Error, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(own));
        Assert.Equal(["buoys.chords", "first.json"], _scratch.Names());
    }

    [Fact]
    public async Task Problems_of_sheet_tower_and_sound_are_told_together()
    {
        var tower = _scratch.Put("quay.toml", ShippedTowers.Text("harbour-47").Replace("sounds = 12", "sounds = 99", StringComparison.Ordinal));
        var ran = await Ran.Of("draft", _scratch.Put("wrong.chords", "| C7b15 |\n"), "--tower", tower, "--sound", "dull", "--out", _scratch.At("first"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("wrong.chords:1:", ran.Error, StringComparison.Ordinal);
        Assert.Contains("quay.toml:7:10: 'sounds' is 99; expected a whole number from -24 to 36 semitones\n", ran.Error, StringComparison.Ordinal);
        Assert.Contains("dull: no sound of that name ships, and there is no such file", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tower_without_the_low_root_is_told_to_have_had_a_rule_lifted()
    {
        var tower = _scratch.Put("quay.toml", ShippedTowers.Text("harbour-47").Replace("\"G4\"", "\"F3\"", StringComparison.Ordinal));
        var sheet = _scratch.Put("high.chords", "title: High\nkey: G\ntime: 4/4\ntempo: 84\n| G | C | G ||\n");
        var ran = await Ran.Of("draft", sheet, "--tower", tower, "--out", _scratch.At("high"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains($"\ndoes not go as written: 2, told in {_scratch.At("high")}.txt\n", ran.Output, StringComparison.Ordinal);
        var told = string.Join(' ', File.ReadAllText(_scratch.At("high.txt")).Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(
            "Bar 1 beat 1, G: Merrowhaven Harbour Tower has no pedal on G, so another tone lies lowest.",
            told,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_names_both()
    {
        var help = (await Ran.Of("draft", "--help")).Output;
        Assert.Contains("--tower <NAME or FILE>", help, StringComparison.Ordinal);
        Assert.Contains("--sound <NAME or FILE>", help, StringComparison.Ordinal);
        Assert.Contains("--key F --sound bright --out waltz", help, StringComparison.Ordinal);
    }

    private static string Own(string text, string name) =>
        string.Join('\n', text.Split('\n').Select(line => line.StartsWith("name = ", StringComparison.Ordinal) ? $"name = \"{name}\"" : line));

    private Task<Ran> Draft(params string[] options) =>
        Ran.Of(["draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"), .. options]);
}
