using System.Text.Json;
using Xunit;

namespace Revoicer.Cli.Tests.Audits;

public sealed class AuditCommandTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";
    private const string Tune = "X:1\nT:Two Buoys\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"ceg2|\"G7\"fdB2|\"C\"c4|]\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_draft_is_playable_and_has_its_own_figures()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        var before = _scratch.Names();
        var ran = await Ran.Of("audit", _scratch.At("first.json"), "--json");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        using var audit = JsonDocument.Parse(ran.Output);
        using var draft = JsonDocument.Parse(File.ReadAllText(_scratch.At("first.json")));
        Assert.True(audit.RootElement.GetProperty("playable").GetBoolean());
        Assert.Equal(Dose(draft), Dose(audit));
        Assert.Equal(before, _scratch.Names());

        static double Dose(JsonDocument json) => json.RootElement.GetProperty("totals").GetProperty("clashDose").GetDouble();
    }

    [Fact]
    public async Task A_score_of_a_draft_can_be_played()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        var ran = await Ran.Of("audit", _scratch.At("first.musicxml"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("\nPlayable     yes, all of it\n", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_midi_file_of_a_draft_can_be_played_once_it_is_known_to_be_at_sounding_pitch()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        var ran = await Ran.Of("audit", _scratch.At("first.mid"), "--sounding", "--json");
        Assert.Equal(0, ran.ExitCode);
        using var audit = JsonDocument.Parse(ran.Output);
        using var draft = JsonDocument.Parse(File.ReadAllText(_scratch.At("first.json")));
        Assert.Equal(Bells(draft), Bells(audit));
        Assert.Equal(1, (await Ran.Of("audit", _scratch.At("first.mid"), "--key", "+11")).ExitCode);

        static int[] Bells(JsonDocument json) => [.. json.RootElement.GetProperty("strokes").EnumerateArray().Select(s => s.GetProperty("midi").GetInt32())];
    }

    [Fact]
    public async Task The_report_is_told_with_the_cautions()
    {
        var ran = await Ran.Of("audit", _scratch.Put("buoys.abc", Tune));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("Two Buoys\n=========\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\nBar by bar\n----------\nBar 1: C; 3 strokes; clash ", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\nBefore you play\n", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith("licensed to say.\n", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_played_ends_with_code_1_and_is_told()
    {
        // Two octaves from C4 to C6: a fifth higher the tune's G5 is D6.
        var file = _scratch.Put("buoys.abc", Tune);
        Assert.Equal(0, (await Ran.Of("audit", file, "--tower", "chapel-23")).ExitCode);
        var ran = await Ran.Of("audit", file, "--tower", "chapel-23", "--key", "+7");
        Assert.Equal((1, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("Notes without a bell here", ran.Output, StringComparison.Ordinal);
        Assert.Contains("Every note has a bell with --key ", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tempo_and_key_of_a_passage_are_as_asked()
    {
        var ran = await Ran.Of("audit", _scratch.Put("buoys.abc", Tune), "--tempo", "60", "--key", "D");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("\nKey          you read D major;", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\nTempo        60 quarter notes a minute\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\nBar 1: D; ", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_arrangement_has_its_key_and_times_already()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        foreach (var option in new[] { new[] { "--tempo", "60" }, ["--key", "+2"], ["--piece", "1"], ["--sounding"] })
        {
            var ran = await Ran.Of(["audit", _scratch.At("first.json"), .. option]);
            Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
            Assert.EndsWith("leave them out, or make the draft anew with them\n", ran.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_arrangement_for_another_tower_is_told()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        var ran = await Ran.Of("audit", _scratch.At("first.json"), "--tower", "lighthouse-49", "--sound", "bright");
        Assert.Contains("  - It was made for Merrowhaven Harbour Tower.\n  - It was made in the sound balanced, whose touch it keeps.\n", ran.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nothing.json", null, "there is no such file")]
    [InlineData("broken.json", "{", "broken.json:1:")]
    [InlineData("sheet.chords", Sheet, "not a kind of file that holds a passage")]
    [InlineData("silent.abc", "X:1\nT:Calm\nM:4/4\nL:1/4\nK:C\n\"C\"z4|]\n", "there are no notes in it")]
    public async Task What_cannot_be_read_ends_with_code_2_and_a_sentence(string name, string? text, string sentence)
    {
        var file = text is null ? _scratch.At(name) : _scratch.Put(name, text);
        var ran = await Ran.Of("audit", file);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_key_of_another_mode_is_refused()
    {
        var ran = await Ran.Of("audit", _scratch.Put("buoys.abc", Tune), "--key", "A minor");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("would change its mode", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_help_has_an_example()
    {
        var ran = await Ran.Of("audit", "--help");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("Example: revoicer audit first-draft.json", ran.Output, StringComparison.Ordinal);
    }
}
