using System.Text.Json;
using Xunit;

namespace Revoicer.Cli.Tests.Revoices;

public sealed class RevoiceCommandTests : IDisposable
{
    // Four voices close together, in the manner of a hymn; the tune is on top, the bass below the pedals' compass at first.
    private const string Anchorage = """
        X:1
        T:Anchorage
        M:4/4
        L:1/4
        Q:1/4=72
        K:F
        V:S
        c2 A F|G2 A2|B2 A G|F4|]
        V:A
        A2 F F|E2 F2|F2 F E|C4|]
        V:T clef=bass
        F2 C A,|C2 C2|D2 C B,|A,4|]
        V:B clef=bass
        F,2 F, D,|C,2 F,2|B,,2 C, C,|F,4|]

        """;

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task The_tune_is_kept_note_for_note_and_the_original_is_not_touched()
    {
        var file = _scratch.Put("anchorage.abc", Anchorage);
        var ran = await Ran.Of("revoice", file, "--out", _scratch.At("anew"));

        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("moved: ", ran.Output, StringComparison.Ordinal);
        Assert.Equal(Anchorage, File.ReadAllText(file));
        using var made = JsonDocument.Parse(File.ReadAllText(_scratch.At("anew.json")));
        int[] tune = [.. Strokes(made).Where(s => s.GetProperty("tune").GetBoolean()).Select(s => s.GetProperty("midi").GetInt32())];
        var octaves = made.RootElement.GetProperty("tuneOctaves").GetInt32();
        Assert.Equal([72, 69, 65, 67, 69, 70, 69, 67, 65], tune.Select(n => n - (12 * octaves)));
        Assert.Equal(["anchorage.abc", "anew.json", "anew.mid", "anew.musicxml", "anew.txt"], _scratch.Names());
    }

    [Fact]
    public async Task The_text_tells_bar_by_bar_what_moved_before_it_gives_the_reasons()
    {
        await Ran.Of("revoice", _scratch.Put("anchorage.abc", Anchorage), "--out", _scratch.At("anew"), "--stay-close", "0.5");
        var text = File.ReadAllText(_scratch.At("anew.txt"));

        Assert.StartsWith("Anchorage, voiced anew\n======================\n", text, StringComparison.Ordinal);
        Assert.Contains("\nChords       ", text, StringComparison.Ordinal);
        Assert.Contains("\nBefore and after, bar by bar\n", text, StringComparison.Ordinal);
        Assert.Matches(@"\nBar 1: clash \d+\.\d( \(\d+\.\d with the tune's own\))? before,\s+\d+\.\d", text);
        Assert.Contains("not playable before", text, StringComparison.Ordinal);
        Assert.Contains("no bell for Bb2", text, StringComparison.Ordinal);
        Assert.Contains("\nChord by chord\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_closer_it_is_to_stay_the_less_of_it_moves()
    {
        var file = _scratch.Put("anchorage.abc", Anchorage);
        var price = new List<double>();
        foreach (var close in new[] { "0.01", "0.3", "1" })
        {
            await Ran.Of("revoice", file, "--out", _scratch.At("anew"), "--force", "--stay-close", close);
            using var made = JsonDocument.Parse(File.ReadAllText(_scratch.At("anew.json")));
            price.Add(made.RootElement.GetProperty("choices").EnumerateArray()
                .SelectMany(c => c.GetProperty("terms").EnumerateArray())
                .Where(t => t.GetProperty("term").GetString() == "distance from what was there")
                .Sum(t => t.GetProperty("thousandths").GetDouble() / double.Parse(close, System.Globalization.CultureInfo.InvariantCulture)));
        }

        Assert.True(price[0] >= price[1] && price[1] >= price[2] && price[0] > price[2], string.Join(", ", price));
    }

    [Fact]
    public async Task Another_voice_may_have_the_tune()
    {
        await Ran.Of("revoice", _scratch.Put("anchorage.abc", Anchorage), "--out", _scratch.At("anew"), "--voice", "t");
        Assert.Contains("voice 'T', as asked for", File.ReadAllText(_scratch.At("anew.txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("there is no voice 'X' in it; expected one of 'S', 'A', 'T', 'B', or its number from 1", "--voice", "X")]
    [InlineData("--key: 'best' is no key", "--key", "best")]
    [InlineData("--stay-close: '2' is no closeness; expected a number from 0 to 1", "--stay-close", "2")]
    [InlineData("--stay-close: 'near' is no closeness; expected a number from 0 to 1", "--stay-close", "near")]
    public async Task What_cannot_be_is_told_with_code_2(string sentence, params string[] asked)
    {
        var ran = await Ran.Of(["revoice", _scratch.Put("anchorage.abc", Anchorage), "--out", _scratch.At("anew"), .. asked]);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
        Assert.Equal(["anchorage.abc"], _scratch.Names());
    }

    [Fact]
    public async Task Music_without_notes_and_other_kinds_of_file_are_refused()
    {
        var ran = await Ran.Of("revoice", _scratch.Put("quiet.abc", "X:1\nM:4/4\nL:1/4\nK:C\nz4|]\n"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("there are no notes in it", ran.Error, StringComparison.Ordinal);
        Assert.Equal(2, (await Ran.Of("revoice", _scratch.Put("quay.chords", "| C |\n"))).ExitCode);
    }

    [Fact]
    public async Task The_result_never_takes_the_place_of_the_original()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n"), "--out", _scratch.At("first"));
        var before = File.ReadAllBytes(_scratch.At("first.musicxml"));
        var ran = await Ran.Of("revoice", _scratch.At("first.musicxml"), "--out", _scratch.At("first"), "--force");
        Assert.Equal(3, ran.ExitCode);
        Assert.Equal(before, File.ReadAllBytes(_scratch.At("first.musicxml")));
    }

    private static IEnumerable<JsonElement> Strokes(JsonDocument made) => made.RootElement.GetProperty("strokes").EnumerateArray();
}
