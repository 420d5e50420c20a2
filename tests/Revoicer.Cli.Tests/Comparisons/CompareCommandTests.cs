using System.Text.Json;
using System.Text.RegularExpressions;
using Revoicer.Sounds;
using Xunit;

namespace Revoicer.Cli.Tests.Comparisons;

public sealed partial class CompareCommandTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";
    private const string Tune = "X:1\nT:Ebb\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"G2 e2 | \"G7\"d2 B2 | \"C\"c4 |]\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task The_sounds_that_ship_stand_side_by_side_and_nothing_is_written()
    {
        var ran = await Compare();
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("Two Buoys: 3 chords as heard\ntower: Merrowhaven Harbour Tower\nkey: you read C major; ", ran.Output, StringComparison.Ordinal);
        Assert.Equal(ShippedSounds.Names, Rows(ran).Select(r => r.Split(' ')[0]));
        Assert.All(Rows(ran), row => Assert.Matches("  proven  +[0-9.]+ s$", row));
        Assert.Contains("* the best in its column", ran.Output, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Fact]
    public async Task Two_runs_differ_in_nothing_but_the_times()
    {
        var (one, two) = (await Compare("--keys", "-1..1"), await Compare("--keys", "-1..1"));
        Assert.Equal(Times().Replace(one.Output, "TIME"), Times().Replace(two.Output, "TIME"));
        Assert.Equal((await Compare("--json")).Output, (await Compare("--json")).Output);
    }

    [Fact]
    public async Task Towers_sounds_keys_and_layouts_are_all_combined_each_once()
    {
        var own = _scratch.Put("airy.toml", ShippedSounds.Text("bright").Replace("name = \"bright\"", "name = \"airy\"", StringComparison.Ordinal));
        var sheet = _scratch.Put("ebb.abc", Tune);
        var ran = await Ran.Of(
            "compare", sheet, "--sound", "full", "--sound", own, "--sound", "full", "--tower", "harbour-47", "--tower", "great-56", "--keys", "0..1", "--layout", "above", "--layout", "below", "--json");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        using var json = JsonDocument.Parse(ran.Output);
        var settings = json.RootElement.GetProperty("settings").EnumerateArray()
            .Select(s => (s.GetProperty("tower").GetString(), s.GetProperty("sound").GetString(), s.GetProperty("layout").GetString(), s.GetProperty("semitones").GetInt32()))
            .ToArray();
        Assert.Equal(16, settings.Distinct().Count());
        Assert.Equal(16, settings.Length);
        Assert.Equal(("Merrowhaven Harbour Tower", "full", "above", 0), settings[0]);
        Assert.Equal(8, json.RootElement.GetProperty("advice").GetArrayLength());
    }

    [Fact]
    public async Task A_key_is_recommended_and_not_taken()
    {
        var ran = await Compare("--keys", "-5..6", "--sound", "balanced");
        Assert.Equal(12, Rows(ran).Length);
        Assert.Single(Rows(ran), row => row.Contains('<', StringComparison.Ordinal));
        Assert.Contains("\n< ", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith("nothing is moved unless you say so: draft with --key, or --key best\n", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_plain_hand_stands_below_and_can_be_heard()
    {
        var ran = await Compare("--plain", "--out", _scratch.At("first"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("\nplain hand  ", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith($"wrote {_scratch.At("first-plain.mid")}\n", ran.Output, StringComparison.Ordinal);
        Assert.Equal("MThd"u8.ToArray(), File.ReadAllBytes(_scratch.At("first-plain.mid"))[..4]);
        var again = await Compare("--plain", "--out", _scratch.At("first"));
        Assert.Equal(3, again.ExitCode);
        Assert.Contains("first-plain.mid exists already", again.Error, StringComparison.Ordinal);
        Assert.Equal("", again.Output);
        Assert.Equal(0, (await Compare("--plain", "--force", "--out", _scratch.At("first"))).ExitCode);
    }

    [Fact]
    public async Task Chords_that_differ_and_one_bar_are_told_in_words()
    {
        var ran = await Compare("--sound", "bright", "--sound", "full", "--chords", "--bar", "2");
        Assert.Contains("\nfull beside bright: ", ran.Output, StringComparison.Ordinal);
        Assert.Matches("\nBar 2, beat 1:\n  bright: [^:]+: [^:]+ Clash\\s+[0-9.]+\\.\n  full: ", ran.Output);
    }

    [Fact]
    public async Task Sounds_of_different_fades_have_no_best_dose()
    {
        var own = _scratch.Put("dry.toml", ShippedSounds.Text("bright").Replace("fade = 1.16", "fade = 0.5", StringComparison.Ordinal).Replace("name = \"bright\"", "name = \"dry\"", StringComparison.Ordinal));
        var ran = await Compare("--sound", "full", "--sound", own);
        Assert.Contains("\nthe sounds have different fades, so their clash doses cannot be compared\n", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_says_the_same_is_drafted_once_and_a_changed_copy_that_kept_its_name_is_told_apart()
    {
        var same = _scratch.Put("same.toml", ShippedSounds.Text("full"));
        var own = _scratch.Put("own.toml", ShippedSounds.Text("full").Replace("fade = 1.16", "fade = 1.2", StringComparison.Ordinal));
        var ran = await Compare("--sound", "full", "--sound", same, "--sound", own, "--json");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal(["full", $"full ({own})"], json.RootElement.GetProperty("settings").EnumerateArray().Select(s => s.GetProperty("sound").GetString()));

        var folder = Directory.CreateDirectory(_scratch.At("recital")).FullName;
        File.WriteAllText(Path.Combine(folder, "ebb.abc"), Tune);
        var sheets = await Ran.Of("compare", folder, "--sound", "full", "--sound", own);
        Assert.Contains($"\nfull ({own}): least clash on 0, most carry on ", sheets.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_the_cheaper_layout_is_asked_for_the_one_taken_is_told()
    {
        var ran = await Ran.Of("compare", _scratch.Put("ebb.abc", Tune), "--sound", "full", "--layout", "above", "--layout", "below", "--layout", "best", "--json");
        using var json = JsonDocument.Parse(ran.Output);
        var settings = json.RootElement.GetProperty("settings").EnumerateArray().ToArray();
        Assert.Equal(["above", "below"], settings[..2].Select(s => s.GetProperty("layoutTaken").GetString()));
        var cheaper = settings[..2].MinBy(s => s.GetProperty("figures").GetProperty("price").GetInt64()).GetProperty("layout").GetString();
        Assert.Equal(cheaper, settings[2].GetProperty("layoutTaken").GetString());
        Assert.Contains($"\nfull   best ({cheaper})  ", (await Ran.Of("compare", _scratch.At("ebb.abc"), "--sound", "full", "--layout", "best")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--keys", "6..-5", "--keys: '6..-5' is no range of keys; expected the lowest and the highest in semitones from the written key, -11 to 11, such as -5..6")]
    [InlineData("--keys", "0..12", "'0..12' is no range of keys")]
    [InlineData("--keys", "1..2..3", "'1..2..3' is no range of keys")]
    [InlineData("--keys", "-2147483648", "is no range of keys")]
    [InlineData("--keys", "G", "'G' is no range of keys")]
    [InlineData("--bar", "four", "--bar: 'four' is no number of a bar; expected a whole number")]
    [InlineData("--bar", "9", "there is no such bar; expected one from 1 to 3")]
    [InlineData("--sound", "dull", "dull: no sound of that name ships")]
    [InlineData("--tower", "dull", "dull: no tower of that name ships")]
    [InlineData("--layout", "beside", "--layout: 'beside' is no layout; expected above, below or best")]
    [InlineData("--layout", "below", "there is no tune on this sheet, so --layout has nothing to lay anywhere")]
    [InlineData("--out", "first", "--out names the files that --plain and --pictures write; add one of these, or leave it out")]
    [InlineData("--tempo", "0", "'0' is no tempo")]
    public async Task What_was_typed_wrong_is_said_in_a_sentence(string option, string value, string sentence)
    {
        var ran = await Compare(option, value);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Fact]
    public async Task Json_has_the_figures_alone()
    {
        var ran = await Compare("--json", "--chords");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("--json prints the figures alone; leave out --chords and --bar, or --json", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_many_drafts_are_refused()
    {
        var sounds = Enumerable.Range(0, 30).SelectMany(i => new[] { "--sound", _scratch.Put($"s{i}.toml", ShippedSounds.Text("full").Replace("\"full\"", $"\"full {i}\"", StringComparison.Ordinal)) });
        var ran = await Ran.Of(["compare", _scratch.Put("buoys.chords", Sheet), "--keys", "-11..11", .. sounds]);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("these settings come to 690 drafts; expected at most 500", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wish_for_no_place_is_wrong_usage_and_one_that_cannot_be_met_is_told_under_the_table()
    {
        var astray = await Compare("--wishes", _scratch.Put("astray.toml", "[[pin]]\nbar = 9\nfigure = \"rolled\"\n"));
        Assert.Equal((2, ""), (astray.ExitCode, astray.Output));
        Assert.Contains("astray.toml:2:", astray.Error, StringComparison.Ordinal);
        var unmet = await Compare("--sound", "full", "--wishes", _scratch.Put("unmet.toml", "[[pin]]\nbar = 1\nbass = \"C#3\"\n"));
        Assert.Equal(1, unmet.ExitCode);
        Assert.Contains("no draft (1)", unmet.Output, StringComparison.Ordinal);
        Assert.Contains("\n(1) ", unmet.Output, StringComparison.Ordinal);

        // C#3 has no bell in any sound, which is told once.
        var twice = await Compare("--sound", "full", "--sound", "bright", "--wishes", _scratch.At("unmet.toml"));
        Assert.Equal(2, Regex.Count(twice.Output, Regex.Escape("no draft (1)")));
        Assert.DoesNotContain("(2)", twice.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_is_compared_a_sheet_a_line_and_one_that_fails_stops_no_other()
    {
        var folder = Folder();
        var ran = await Ran.Of("compare", folder, "--sound", "bright", "--sound", "full");
        Assert.Equal(2, ran.ExitCode);
        Assert.Equal(["broken.chords", "buoys.chords", "ebb.abc", "gone.abc"], Rows(ran).Select(r => r.Split(' ')[0]));
        Assert.Contains("broken.chords:1:", ran.Error, StringComparison.Ordinal);
        Assert.Contains("gone.abc: cannot be opened", ran.Error, StringComparison.Ordinal);
        Assert.Contains("\n4 sheets: 2 compared, 2 failed\nfailed: broken.chords, gone.abc; why is told above\n", ran.Output, StringComparison.Ordinal);
        Assert.Matches("\nfull: least clash on [0-2], most carry on [0-2], least effort on [0-2] of 2 sheets\n", ran.Output);
    }

    // A sheet's comparison is the one that the sheet has by itself, so its shape is held there.
    [Fact]
    public async Task A_folder_as_json_has_the_comparison_of_every_sheet_and_null_for_one_that_cannot_be_read()
    {
        var folder = Folder();
        var ran = await Ran.Of("compare", folder, "--sound", "full", "--json");
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("broken.chords:1:", ran.Error, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal(2, json.RootElement.GetProperty("format").GetInt32());
        var sheets = json.RootElement.GetProperty("sheets").EnumerateArray().ToArray();
        Assert.Equal(["broken.chords", "buoys.chords", "ebb.abc", "gone.abc"], sheets.Select(s => s.GetProperty("name").GetString()));
        Assert.Equal([JsonValueKind.Null, JsonValueKind.Object, JsonValueKind.Object, JsonValueKind.Null], sheets.Select(s => s.GetProperty("comparison").ValueKind));
        using var alone = JsonDocument.Parse((await Ran.Of("compare", Path.Combine(folder, "ebb.abc"), "--sound", "full", "--json")).Output);
        Assert.True(JsonElement.DeepEquals(alone.RootElement, sheets[2].GetProperty("comparison")));
    }

    [Theory]
    [InlineData("--chords")]
    [InlineData("--plain")]
    [InlineData("--pictures")]
    [InlineData("--trade-off")]
    [InlineData("--bar", "1")]
    [InlineData("--piece", "1")]
    public async Task What_speaks_of_one_sheet_is_refused_for_a_folder(params string[] option)
    {
        var ran = await Ran.Of(["compare", Folder(), .. option]);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains($"{option[0]} is for one sheet, and ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_shows_an_example() => Assert.Contains(
        "Example: revoicer compare leadsheets-demo/ferry-waltz.chords --sound bright --sound full --keys -5..6", (await Ran.Of("compare", "--help")).Output, StringComparison.Ordinal);

    private Task<Ran> Compare(params string[] options) => Ran.Of(["compare", _scratch.Put("buoys.chords", Sheet), .. options]);

    private string Folder()
    {
        var folder = Directory.CreateDirectory(_scratch.At("recital")).FullName;
        File.WriteAllText(Path.Combine(folder, "buoys.chords"), Sheet);
        File.WriteAllText(Path.Combine(folder, "ebb.abc"), Tune);
        File.WriteAllText(Path.Combine(folder, "broken.chords"), "| C7b15 |\n");
        File.WriteAllText(Path.Combine(folder, ".hidden.chords"), Sheet);
        File.WriteAllText(Path.Combine(folder, "notes.docx"), "no sheet");
        File.CreateSymbolicLink(Path.Combine(folder, "gone.abc"), "nowhere");
        Directory.CreateDirectory(Path.Combine(folder, "inside.abc"));
        return folder;
    }

    // The lines between the two empty ones, without the headings.
    private static string[] Rows(Ran ran) =>
        [.. ran.Output.Split("\n\n")[ran.Output.StartsWith("Two", StringComparison.Ordinal) ? 1 : 0].Split('\n').SkipWhile(line => !line.TrimStart().StartsWith("so", StringComparison.Ordinal) && !line.StartsWith("sheet", StringComparison.Ordinal)).Skip(1)];

    [GeneratedRegex(" +[0-9.]+ s$", RegexOptions.Multiline)]
    private static partial Regex Times();
}
