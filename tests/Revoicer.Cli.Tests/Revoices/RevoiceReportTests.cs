using System.Text.Json;
using Xunit;

namespace Revoicer.Cli.Tests.Revoices;

public sealed class RevoiceReportTests : IDisposable
{
    // A low close triad, a chord of which nothing stands under the tune, a bar without a chord, a bell that is missing.
    private const string Rope = """
        X:1
        T:Small Rope
        M:4/4
        L:1/4
        Q:1/4=72
        K:Bb
        V:1
        "Bb" d' b f' d' | "Gm" d'2 b2 | "N.C." g'2 e'2 | "Eb" g'2 e'2 | "Bb" b4 |]
        V:2
        [B,DF]4 | z4 | [EG]4 | [_E,,EB]4 | [B,F]4 |]

        """;

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task The_tune_is_kept_note_for_note_and_the_original_untouched()
    {
        var file = _scratch.Put("rope.abc", Rope);
        var ran = await Ran.Of("revoice", file, "--out", _scratch.At("new"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Equal(["new.json", "new.mid", "new.musicxml", "new.txt", "rope.abc"], _scratch.Names());
        Assert.Equal(Rope, File.ReadAllText(file));

        // The notes of V:1 as the sheet has them, middle C = 60.
        var (tune, octaves) = TuneOf("new.json");
        Assert.Equal([74, 70, 77, 74, 74, 70, 79, 75, 79, 75, 70], tune.Select(n => n - (12 * (octaves + 1))));
    }

    [Fact]
    public async Task What_stood_where_no_chord_is_named_is_told_as_left_out()
    {
        var ran = await Ran.Of("revoice", _scratch.Put("rope.abc", Rope), "--out", _scratch.At("new"));
        Assert.Contains("does not go as written: 1, told in ", ran.Output, StringComparison.Ordinal);
        Assert.Contains(
            "What does not go as written:\n  - Bar 3: what stood under the tune where there is no chord is left out.\n",
            Report(),
            StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing of the sheet was left out", Report(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_became_of_each_bar_is_told()
    {
        await Ran.Of("revoice", _scratch.Put("rope.abc", Rope), "--out", _scratch.At("new"), "--stay-close", "0.1");
        Assert.Contains("\nMoved        all of 4 chords\n", Report(), StringComparison.Ordinal);
        Assert.Contains("; no chord begins in it\n", Report(), StringComparison.Ordinal);
        Assert.Contains("  - not playable before, bar 4, beat 1: no bell for Eb2\n", Report(), StringComparison.Ordinal);
        Assert.Contains(" Notes that have no bell are in no figure of before.", OnOneLine(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tune_that_is_too_quick_is_not_said_to_be_playable_now()
    {
        const string quick = "X:1\nT:Quick Oars\nM:4/4\nL:1/4\nQ:1/4=120\nK:Eb\nV:1\n\"Eb\" _e/4e/4e/4e/4 e g2 | \"Ab\" a4 |]\nV:2\n[E,B,]4 | [A,C]4 |]\n";
        var ran = await Ran.Of("revoice", _scratch.Put("oars.abc", quick), "--out", _scratch.At("new"), "--stay-close", "1");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("\nnow, 4 places cannot be played, of the tune itself\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains(", now not in 4 places, where the tune itself, which is kept, comes too quick ", OnOneLine(), StringComparison.Ordinal);
        Assert.Contains("not playable before, and the tune there not now either, bar 1, beat 1.5: Eb5 is struck again", OnOneLine(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tune_alone_makes_no_chords_and_that_is_told()
    {
        var ran = await Ran.Of("revoice", _scratch.Put("alone.abc", "X:1\nT:Alone\nM:4/4\nL:1/4\nK:G\n^c4|]\n"), "--out", _scratch.At("new"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("it is a tune alone, without chord symbols and without other notes to find chords from", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("calm.abc", "X:1\nT:Calm\nM:4/4\nL:1/4\nK:C\n\"C\"z4|]\n", "there are no notes in it, so there is nothing to voice anew")]
    [InlineData("first.json", "{}", "an arrangement's score, the .musicxml beside it, is one")]
    [InlineData("quay.chords", "| C |\n", "not a kind of file that holds a passage")]
    public async Task What_cannot_be_read_ends_with_code_2_and_a_sentence(string name, string text, string sentence)
    {
        var ran = await Ran.Of("revoice", _scratch.Put(name, text), "--out", _scratch.At("new"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
        Assert.Equal([name], _scratch.Names());
    }

    [Theory]
    [InlineData("revoice")]
    [InlineData("audit")]
    public async Task A_voice_for_the_feet_that_is_not_there_ends_with_code_2_and_the_voices(string command)
    {
        var ran = await Ran.Of(command, _scratch.Put("rope.abc", Rope), "--feet", "trumpet");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("there is no voice 'trumpet' in it; expected one of '1', '2', or its number from 1", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["rope.abc"], _scratch.Names());
    }

    [Fact]
    public async Task The_summary_says_which_voices_are_kept()
    {
        var ran = await Ran.Of("revoice", _scratch.Put("rope.abc", Rope), "--out", _scratch.At("new"));
        Assert.Contains("\nof 3 chords of 0.8 s and more 3 have a bass; of 3 that had three voices or more 3 have a tone between bass and tune\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("Voices       a bass in 3 of 3 chords", Report(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_music_itself_is_never_written_to()
    {
        await Ran.Of("draft", _scratch.Put("quay.chords", "key: C\ntime: 4/4\n| C | G7 | C ||\n"), "--out", _scratch.At("quay"));
        var before = File.ReadAllBytes(_scratch.At("quay.musicxml"));
        var ran = await Ran.Of("revoice", _scratch.At("quay.musicxml"), "--out", _scratch.At("quay"), "--force");
        Assert.Equal((3, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("is an input of this run and is never written to", ran.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(_scratch.At("quay.musicxml")));
    }

    private string OnOneLine() => string.Join(' ', Report().Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private string Report() => File.ReadAllText(_scratch.At("new.txt"));

    private (int[] Notes, int Octaves) TuneOf(string name)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(_scratch.At(name)));
        var notes = json.RootElement.GetProperty("strokes").EnumerateArray()
            .Where(s => s.GetProperty("tune").GetBoolean())
            .Select(s => s.GetProperty("midi").GetInt32())
            .ToArray();
        return (notes, json.RootElement.GetProperty("tuneOctaves").GetInt32());
    }
}
