using System.Text;
using Xunit;

namespace Revoicer.Cli.Tests.Drafts;

public sealed class DraftCommandTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task A_sheet_becomes_four_files()
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        Assert.Equal("", ran.Error);
        Assert.Equal(0, ran.ExitCode);
        Assert.StartsWith("Two Buoys: 3 chords voiced for ", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith($"wrote {_scratch.At("first.mid")}\nwrote {_scratch.At("first.txt")}\nwrote {_scratch.At("first.json")}\nwrote {_scratch.At("first.musicxml")}\n", ran.Output, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords", "first.json", "first.mid", "first.musicxml", "first.txt"], _scratch.Names());
        Assert.Equal("MThd"u8.ToArray(), File.ReadAllBytes(_scratch.At("first.mid"))[..4]);
    }

    [Fact]
    public async Task Bars_that_are_never_heard_are_named_in_every_summary_in_the_reasons_and_in_comparisons()
    {
        const string told = "bar 3 is never heard: the repeats, endings and jumps as written leave it out";
        var sheet = _scratch.Put("buoys.abc", "X:1\nT:Two Buoys\nP:A\nM:4/4\nL:1/4\nK:C\nP:A\n\"C\"c4|\"G\"d4|\nP:B\n\"F\"f4|]\n");
        Directory.CreateDirectory(_scratch.At("recital"));
        foreach (var ran in new[]
        {
            await Ran.Of("draft", sheet, "--out", _scratch.At("first")),
            await Ran.Of("draft", _scratch.At(""), "--out", _scratch.At("recital")),
            await Ran.Of("revoice", sheet, "--voice", "1", "--out", _scratch.At("anew")),
            await Ran.Of("compare", sheet, "--sound", "balanced"),
            await Ran.Of("compare", sheet, "--trade-off"),
            await Ran.Of("compare", _scratch.At("recital/..")),
        })
        {
            Assert.Contains(told, ran.Output, StringComparison.Ordinal);
        }

        var entry = $"  - {char.ToUpperInvariant(told[0])}{told[1..]}.\n";
        Assert.Contains(entry, (await Ran.Of("audit", sheet)).Output, StringComparison.Ordinal);
        Assert.Contains("What does not go as written:\n" + entry, File.ReadAllText(_scratch.At("first.txt")), StringComparison.Ordinal);
        foreach (var json in new[]
        {
            File.ReadAllText(_scratch.At("first.json")),
            File.ReadAllText(_scratch.At("anew.json")),
            (await Ran.Of("compare", sheet, "--sound", "balanced", "--json")).Output,
            (await Ran.Of("compare", sheet, "--trade-off", "--json")).Output,
        })
        {
            Assert.Contains("\"unheard\": [3]", json, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_same_sheet_gives_the_same_bytes()
    {
        var sheet = _scratch.Put("buoys.chords", Sheet);
        await Ran.Of("draft", sheet, "--out", _scratch.At("one"));
        await Ran.Of("draft", sheet, "--out", _scratch.At("two"));
        foreach (var ending in new[] { ".mid", ".txt", ".json", ".musicxml" })
        {
            Assert.Equal(File.ReadAllBytes(_scratch.At("one" + ending)), File.ReadAllBytes(_scratch.At("two" + ending)));
        }
    }

    // A proven answer stays the same whatever may be spent on it, and the bytes with it.
    [Fact]
    public async Task Proving_a_proven_draft_changes_nothing()
    {
        var sheet = _scratch.Put("buoys.chords", Sheet);
        var plain = await Ran.Of("draft", sheet, "--out", _scratch.At("one"));
        var proven = await Ran.Of("draft", sheet, "--prove", "--time-limit", "600", "--out", _scratch.At("two"));
        Assert.All([plain, proven], ran => Assert.Contains("search: proven: no arrangement of this sheet under these settings is cheaper\n", ran.Output, StringComparison.Ordinal));
        Assert.DoesNotContain("time limit", proven.Output, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllBytes(_scratch.At("one.json")), File.ReadAllBytes(_scratch.At("two.json")));
    }

    [Theory]
    [InlineData("x")]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("1,5")]
    [InlineData("NaN")]
    [InlineData("1e9")]
    public async Task A_time_limit_is_a_number_of_seconds(string text)
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--time-limit", text);
        Assert.Equal(2, ran.ExitCode);
        Assert.StartsWith($"revoicer: --time-limit: '{text}' is no time limit; expected a number from 0.1 to 86400 seconds", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_exists_is_replaced_only_by_force()
    {
        var sheet = _scratch.Put("buoys.chords", Sheet);
        _scratch.Put("first.txt", "mine");
        var refused = await Ran.Of("draft", sheet, "--out", _scratch.At("first"));
        Assert.Equal(3, refused.ExitCode);
        Assert.Contains("first.txt exists already; --force replaces it", refused.Error, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords", "first.txt"], _scratch.Names());
        var forced = await Ran.Of("draft", sheet, "--out", _scratch.At("first"), "--force");
        Assert.Equal(0, forced.ExitCode);
        Assert.NotEqual("mine", File.ReadAllText(_scratch.At("first.txt")));
    }

    [Fact]
    public async Task Nothing_is_written_where_the_folder_is_not()
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("nowhere/first"));
        Assert.Equal(3, ran.ExitCode);
        Assert.StartsWith("revoicer: ", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Theory]
    [InlineData("Eb", "you read Eb major")]
    [InlineData("+2", "you read D major")]
    [InlineData("-1", "you read B major")]
    public async Task Another_key_is_told_written_and_sounding(string key, string told)
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--key", key, "--out", _scratch.At("moved"));
        Assert.Equal("", ran.Error);
        Assert.Contains(told, File.ReadAllText(_scratch.At("moved.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_chord_moves_with_its_spelling()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--key", "Ab", "--out", _scratch.At("moved"));
        Assert.Contains("\"symbol\": \"Eb7\"", File.ReadAllText(_scratch.At("moved.json")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_tempo_is_taken_and_told()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--tempo", "96.5", "--out", _scratch.At("quick"));
        Assert.Contains("96.5 quarter notes a minute", File.ReadAllText(_scratch.At("quick.txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--tempo", "96,5", "'96,5' is no tempo; expected a number from 20 to 300")]
    [InlineData("--tempo", "0", "'0' is no tempo")]
    [InlineData("--tempo", "NaN", "'NaN' is no tempo")]
    [InlineData("--key", "H", "'H' is no key; expected a name such as G")]
    [InlineData("--key", "+12", "'+12' is no key")]
    [InlineData("--key", "2", "'2' is no key")]
    [InlineData("--piece", "two", "--piece: 'two' is no number of a tune; expected the whole number behind its X:")]
    [InlineData("--piece", "-1", "--piece: '-1' is no number of a tune")]
    [InlineData("--piece", "99999999999", "--piece: '99999999999' is no number of a tune")]
    [InlineData("--colour", "red", "--colour")]
    public async Task What_was_typed_wrong_is_said_in_a_sentence(string option, string value, string sentence)
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), option, value, "--out", _scratch.At("first"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("try 'revoicer draft --help'\n", ran.Error, StringComparison.Ordinal);
        Assert.Equal("", ran.Output);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Theory]
    [InlineData("")]
    [InlineData(".mid")]
    public async Task A_name_that_is_none_is_said_in_a_sentence(string name)
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", name);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains($"'{name}' leaves no name for the files", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_key_of_the_other_mode_or_without_a_start_is_refused()
    {
        var other = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--key", "A minor", "--out", _scratch.At("x"));
        Assert.Equal((2, ""), (other.ExitCode, other.Output));
        Assert.Contains("the sheet is in C major, and --key A minor would change its mode; name a major key", other.Error, StringComparison.Ordinal);
        var keyless = await Ran.Of("draft", _scratch.Put("keyless.chords", "time: 4/4\n| C ||\n"), "--key", "G", "--out", _scratch.At("x"));
        Assert.Equal(2, keyless.ExitCode);
        Assert.Contains("the sheet names no key", keyless.Error, StringComparison.Ordinal);
        Assert.Contains("('key: C' in a .chords file, 'K:C' in ABC)", keyless.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_problems_of_a_sheet_are_told_at_once_with_carets()
    {
        var sheet = _scratch.Put("wrong.chords", "title: Wrong\ntime: 4/4\n| C7b15 | C F G |\n");
        var ran = await Ran.Of("draft", sheet, "--out", _scratch.At("x"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains($"{sheet}:3:6: ", ran.Error, StringComparison.Ordinal);
        Assert.Contains("    | C7b15 | C F G |\n         ^^\n", ran.Error, StringComparison.Ordinal);
        Assert.Contains("C / F G", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["wrong.chords"], _scratch.Names());
    }

    [Theory]
    [InlineData("missing.chords", "there is no such file")]
    [InlineData("tune.docx", "expected a .chords, .abc, .musicxml, .xml or .mxl file")]
    public async Task A_file_that_cannot_be_opened_is_said_in_a_sentence(string name, string sentence)
    {
        var ran = await Ran.Of("draft", _scratch.At(name));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_other_bytes_and_a_huge_file_are_refused()
    {
        Directory.CreateDirectory(_scratch.At("folder.chords"));
        Assert.Equal(2, (await Ran.Of("draft", _scratch.At("folder.chords"))).ExitCode);
        File.WriteAllBytes(_scratch.At("latin.chords"), Encoding.Latin1.GetBytes("title: Quai \u00e9troit\n| C ||\n"));
        Assert.Contains("is not UTF-8", (await Ran.Of("draft", _scratch.At("latin.chords"))).Error, StringComparison.Ordinal);
        _scratch.Put("huge.chords", new string('#', 5_000_000));
        Assert.Contains("bytes; expected a sheet of at most", (await Ran.Of("draft", _scratch.At("huge.chords"))).Error, StringComparison.Ordinal);
        _scratch.Put("empty.chords", "");
        Assert.Equal(2, (await Ran.Of("draft", _scratch.At("empty.chords"))).ExitCode);
    }

    [Fact]
    public async Task Utf16_is_told_as_such()
    {
        File.WriteAllBytes(_scratch.At("wide.abc"), [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("X:1\nK:C\n\"C\"C8|\n")]);
        var ran = await Ran.Of("draft", _scratch.At("wide.abc"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Equal($"{_scratch.At("wide.abc")}: the file is UTF-16 text; expected it saved as UTF-8\n", ran.Error);
    }

    [Theory]
    [InlineData("--piece", "2")]
    [InlineData("--voice", "T")]
    public async Task A_choice_that_a_chord_grid_does_not_offer_is_told(string option, string value)
    {
        var sheet = _scratch.Put("buoys.chords", Sheet);
        var ran = await Ran.Of("draft", sheet, option, value, "--out", _scratch.At("first"));
        Assert.Equal(0, ran.ExitCode);
        Assert.Equal($"warning: {sheet}: --piece and --voice choose from an ABC file and change nothing here\n", ran.Error);
    }

    [Fact]
    public async Task A_score_is_read_and_its_own_name_stays_free()
    {
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first"));
        var again = await Ran.Of("draft", _scratch.At("first.musicxml"), "--voice", "1", "--out", _scratch.At("second"));
        Assert.Equal(("", 0), (again.Error, again.ExitCode));
        Assert.StartsWith("Two Buoys: 3 chords voiced for ", again.Output, StringComparison.Ordinal);
        Assert.Equal("first-draft", Revoicer.Cli.Files.OutputName.Of(null, "in/first.musicxml"));
        Assert.Equal("first", Revoicer.Cli.Files.OutputName.Of(null, "in/first.mxl"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("<score-partwise><part>")]
    [InlineData("PK\u0003\u0004")]
    [InlineData("<!DOCTYPE a [<!ENTITY b \"c\">]><a>&b;</a>")]
    public async Task A_broken_score_ends_in_a_sentence(string text)
    {
        var ran = await Ran.Of("draft", _scratch.Put("broken.musicxml", text), "--out", _scratch.At("x"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("broken.musicxml", ran.Error, StringComparison.Ordinal);
        Assert.Contains("; expected ", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["broken.musicxml"], _scratch.Names());
    }

    [Fact]
    public async Task A_sheet_without_chords_is_readable_but_not_playable()
    {
        var ran = await Ran.Of("draft", _scratch.Put("silent.chords", "title: Fog\ntime: 4/4\n| N.C. | N.C. ||\n"), "--out", _scratch.At("x"));
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains("Fog has no chord symbols, so there is nothing to voice", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["silent.chords"], _scratch.Names());
    }

    [Fact]
    public async Task Help_shows_an_example_and_goes_to_output()
    {
        var ran = await Ran.Of("draft", "--help");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("Example: revoicer draft leadsheets-demo/ferry-waltz.chords", ran.Output, StringComparison.Ordinal);
        var root = await Ran.Of("--help");
        Assert.Contains("Clock hammers and swinging bells start without warning", root.Output, StringComparison.Ordinal);
        Assert.Contains("Exit codes: 0 done", root.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData]
    [InlineData("darft")]
    [InlineData("draft")]
    public async Task No_command_and_half_a_command_are_wrong_usage(params string[] args)
    {
        Assert.Equal(2, (await Ran.Of(args)).ExitCode);
    }
}
