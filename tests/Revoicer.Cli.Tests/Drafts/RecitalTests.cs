using System.Diagnostics;
using Xunit;

namespace Revoicer.Cli.Tests.Drafts;

public sealed class RecitalTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task Every_sheet_of_a_folder_is_drafted_as_it_would_be_alone()
    {
        var ran = await Ran.Of("draft", Folder(("buoys.chords", Sheet), ("ebb.chords", Sheet + "| F | C ||\n")), "--out", Out("drafts"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("buoys.chords: Two Buoys, 3 chords (0 silent, 0 of one stroke), ", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith("\n2 sheets: 2 drafted, 0 failed\n", ran.Output, StringComparison.Ordinal);
        await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("alone"));
        foreach (var ending in new[] { ".mid", ".txt", ".json", ".musicxml" })
        {
            Assert.Equal(File.ReadAllBytes(_scratch.At("alone" + ending)), File.ReadAllBytes(Path.Combine(_scratch.At("drafts"), "buoys" + ending)));
            Assert.True(File.Exists(Path.Combine(_scratch.At("drafts"), "ebb" + ending)));
        }
    }

    [Fact]
    public async Task One_that_fails_stops_no_other_and_the_worst_code_is_the_end()
    {
        var folder = Folder(("a.chords", "| C7b15 |\n"), ("b.chords", "title: Fog\ntime: 4/4\n| N.C. ||\n"), ("c.chords", Sheet));
        var ran = await Ran.Of("draft", folder, "--out", Out("drafts"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("a.chords: cannot be read, or not as asked for\nb.chords: has no chord symbols\nc.chords: Two Buoys", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith("3 sheets: 1 drafted, 2 failed\nfailed: a.chords, b.chords; why is told above\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("a.chords:1:", ran.Error, StringComparison.Ordinal);
        Assert.Contains("Fog has no chord symbols", ran.Error, StringComparison.Ordinal);
        Assert.Equal(4, Directory.GetFiles(_scratch.At("drafts")).Length);
    }

    [Fact]
    public async Task What_exists_is_replaced_only_by_force_and_no_sheet_ever()
    {
        var folder = Folder(("buoys.chords", Sheet));
        var (first, again) = (await Ran.Of("draft", folder, "--out", Out("drafts")), await Ran.Of("draft", folder, "--out", _scratch.At("drafts")));
        Assert.Equal((0, 3), (first.ExitCode, again.ExitCode));
        Assert.Contains("exists already; --force replaces it", again.Error, StringComparison.Ordinal);
        Assert.Equal(0, (await Ran.Of("draft", folder, "--out", _scratch.At("drafts"), "--force")).ExitCode);

        // The score of the first sheet would have the name of the second, which is a sheet of the same run.
        var score = File.ReadAllText(Path.Combine(_scratch.At("drafts"), "buoys.musicxml"));
        File.WriteAllText(Path.Combine(folder, "buoys.musicxml"), score);
        var onto = await Ran.Of("draft", folder, "--out", folder, "--force");
        Assert.Equal(3, onto.ExitCode);
        Assert.Contains("buoys.musicxml is an input of this run and is never written to", onto.Error, StringComparison.Ordinal);
        Assert.Equal(score, File.ReadAllText(Path.Combine(folder, "buoys.musicxml")));
        Assert.Contains("buoys.musicxml: Two Buoys, 3 chords", onto.Output, StringComparison.Ordinal);
    }

    // A sheet without chords is told when it is drafted, so not here.
    [Fact]
    public async Task What_exists_is_seen_before_anything_is_drafted()
    {
        var folder = Folder(("buoys.chords", "title: Fog\ntime: 4/4\n| N.C. ||\n"));
        File.WriteAllText(Path.Combine(Out("drafts"), "buoys.txt"), "");
        foreach (var sheet in new[] { folder, Path.Combine(folder, "buoys.chords") })
        {
            var name = sheet == folder ? _scratch.At("drafts") : Path.Combine(_scratch.At("drafts"), "buoys");
            var ran = await Ran.Of("draft", sheet, "--out", name);
            Assert.Equal(3, ran.ExitCode);
            Assert.Contains("buoys.txt exists already; --force replaces it", ran.Error, StringComparison.Ordinal);
            Assert.DoesNotContain("no chord symbols", ran.Error, StringComparison.Ordinal);
        }
    }

    // A pipe without a writer would be waited for without end.
    [Theory]
    [InlineData("draft")]
    [InlineData("compare")]
    public async Task What_holds_nothing_is_passed_over_and_told(string command)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "mkfifo(1) and /dev/zero are there on Linux");
        var folder = Folder(("buoys.chords", Sheet), ("void.abc", ""));
        using (var made = Process.Start("mkfifo", Path.Combine(folder, "pipe.abc")))
        {
            await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        File.CreateSymbolicLink(Path.Combine(folder, "link.chords"), "pipe.abc");
        File.CreateSymbolicLink(Path.Combine(folder, "zero.chords"), "/dev/zero");
        File.CreateSymbolicLink(Path.Combine(folder, "circle.chords"), "circle.chords");
        string[] arguments = command == "draft" ? ["draft", folder, "--out", Out("drafts")] : ["compare", folder, "--sound", "full"];
        var ran = await Ran.Of(arguments);
        Assert.Equal(2, ran.ExitCode);
        Assert.All(["link.chords", "pipe.abc", "void.abc", "zero.chords"], name => Assert.Contains(
            $"{name}: the file is empty, or is a pipe or a device and no file; expected a sheet. It is passed over\n", ran.Error, StringComparison.Ordinal));
        Assert.Contains("6 sheets: 1 ", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_sheets_whose_drafts_would_have_one_name_do_not_fight_for_it()
    {
        var folder = Folder(("buoys.chords", Sheet), ("buoys.abc", "X:1\nT:Ebb\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"G4 |]\n"));
        var ran = await Ran.Of("draft", folder, "--out", Out("drafts"), "--force");
        Assert.Equal(3, ran.ExitCode);
        Assert.Contains("buoys.chords: its draft would have the name of that of ", ran.Error, StringComparison.Ordinal);
        Assert.Contains("\"title\": \"Ebb\"", File.ReadAllText(Path.Combine(_scratch.At("drafts"), "buoys.json")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--wishes", "w.toml", "--wishes speaks of the bars of one sheet, and ")]
    [InlineData("--piece", "2", "--piece chooses from one file, and ")]
    [InlineData("--out", "nowhere/at/all", "--out: there is no folder nowhere/at/all to put the drafts of a folder into; make it, or name another")]
    public async Task What_speaks_of_one_sheet_is_refused_for_a_folder(string option, string value, string sentence)
    {
        var ran = await Ran.Of("draft", Folder(("buoys.chords", Sheet)), option, value);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(sentence, ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("draft")]
    [InlineData("compare")]
    public async Task A_folder_without_a_sheet_is_told(string command)
    {
        var ran = await Ran.Of(command, Folder());
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.EndsWith("the folder has no sheet; expected .chords, .abc, .musicxml, .xml or .mxl files in it\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_that_would_break_a_line_does_not()
    {
        var ran = await Ran.Of("draft", Folder(("ebb\n\u001b[31m.chords", Sheet)), "--out", Out("drafts"));
        Assert.Equal(0, ran.ExitCode);
        Assert.StartsWith(@"ebb\u000a\u001b[31m.chords: Two Buoys", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_best_key_is_found_applied_and_told()
    {
        var sheet = _scratch.Put("buoys.chords", Sheet);
        var ran = await Ran.Of("draft", sheet, "--key", "best", "--out", _scratch.At("best"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        var told = ran.Output.Split('\n').Single(line => line.StartsWith("key: the best of 12, ", StringComparison.Ordinal));
        var semitones = told.Split('(', ')')[1];
        await Ran.Of("draft", sheet, "--key", semitones == "0" ? "C" : semitones, "--out", _scratch.At("plain"));
        Assert.Equal(File.ReadAllBytes(_scratch.At("plain.mid")), File.ReadAllBytes(_scratch.At("best.mid")));
        var report = File.ReadAllText(_scratch.At("best.txt"));
        Assert.Contains("a key that suits the tower, the best of 12, ", report, StringComparison.Ordinal);
        Assert.Matches("\nKey +you read [A-G][b#]? major; it is heard an octave higher, in [A-G]", report);
    }

    private string Out(string name) => Directory.CreateDirectory(_scratch.At(name)).FullName;

    private string Folder(params (string Name, string Text)[] sheets)
    {
        var folder = Directory.CreateDirectory(_scratch.At("recital")).FullName;
        foreach (var (name, text) in sheets)
        {
            File.WriteAllText(Path.Combine(folder, name), text);
        }

        return folder;
    }
}
