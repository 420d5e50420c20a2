using System.Diagnostics;
using Xunit;

namespace Revoicer.Cli.Tests.Streams;

/// <summary>The built program as a process of its own: streams that a shell leads elsewhere, and signals.</summary>
public sealed class ProgramTests : IDisposable
{
    private const string Full = "No space left on device";
    private const string Closed = "it is closed";
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("towers >/dev/full", Full)]
    [InlineData("--help >/dev/full", Full)]
    [InlineData("sounds bright --print >/dev/full", Full)]
    [InlineData("towers >&-", Closed)]
    [InlineData("towers <&- >&-", Closed)]
    public async Task Results_that_cannot_be_said_end_in_a_sentence(string command, string why)
    {
        var ran = await Shell(command);
        Assert.Equal((3, ""), (ran.ExitCode, ran.Output));
        Assert.Equal($"revoicer: the standard output could not be written to: {why}; lead it to a terminal, or to a file with room (files that this run has written are whole)\n", ran.Error);
    }

    [Theory]
    [InlineData("nonsense 2>/dev/full", Full)]
    [InlineData("nonsense 2>&-", Closed)]
    [InlineData("towers none.toml <&- 2>&-", Closed)]
    public async Task Problems_that_cannot_be_said_end_in_a_sentence_where_the_results_would_stand(string command, string why)
    {
        var ran = await Shell(command);
        Assert.Equal((3, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith($"revoicer: the standard error could not be written to: {why}; ", ran.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("towers >&- 2>&-")]
    [InlineData("towers <&- >&- 2>&-")]
    [InlineData("towers >/dev/full 2>/dev/full")]
    public async Task Where_nothing_can_be_said_the_exit_code_tells(string command) =>
        Assert.Equal(new Ran(3, "", ""), await Shell(command));

    [Fact]
    public async Task With_a_closed_output_no_draft_is_begun()
    {
        _scratch.Put("buoys.chords", Sheet);
        Assert.Equal(3, (await Shell("draft buoys.chords --out first >&-")).ExitCode);
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Fact]
    public async Task With_a_full_output_the_files_of_a_draft_are_whole()
    {
        _scratch.Put("buoys.chords", Sheet);
        Assert.Equal(3, (await Shell("draft buoys.chords --out first >/dev/full")).ExitCode);
        Assert.Equal(["buoys.chords", "first.json", "first.mid", "first.musicxml", "first.txt"], _scratch.Names());
    }

    // The status of a pipeline is that of the last command; the first puts its own into a file.
    [Fact]
    public async Task A_reader_that_goes_away_ends_it_quietly()
    {
        var ran = await Shell("towers; echo $? >status) | (exec <&-; true", before: "(");
        Assert.Equal(("", ""), (ran.Output, ran.Error));
        Assert.Equal("0\n", await File.ReadAllTextAsync(_scratch.At("status"), TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("towers", "pipe.toml", "TERM")]
    [InlineData("sounds", "pipe.toml", "TERM")]
    [InlineData("draft", "pipe.chords", "TERM")]
    [InlineData("revoice", "pipe.abc", "TERM")]
    [InlineData("audit", "pipe.mid", "TERM")]
    [InlineData("compare", "pipe.abc", "TERM")]
    [InlineData("audit", "pipe.json", "INT")]
    [InlineData("draft", "pipe.abc", "INT")]
    public async Task A_signal_ends_every_command_also_one_that_waits(string command, string pipe, string signal)
    {
        Assert.Equal(0, (await Run("/bin/sh", "-c", $"mkfifo {_scratch.At(pipe)}")).ExitCode);
        using var program = Start(Program, command, _scratch.At(pipe));

        // A pipe opens for writing once the program has opened it for reading; then the program waits for what never comes.
        await using var writer = await Task.Run(() => new FileStream(_scratch.At(pipe), FileMode.Open, FileAccess.Write), TestContext.Current.CancellationToken);
        Assert.Equal(0, (await Run("/bin/sh", "-c", $"kill -{signal} {program.Id}")).ExitCode);
        Assert.Equal(new Ran(130, "", "interrupted; nothing is half written\n"), await Ended(program));
    }

    [Fact]
    public async Task A_draft_that_is_broken_off_writes_nothing()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var interrupted = new CancellationTokenSource();
        await interrupted.CancelAsync();
        Assert.Equal(130, CommandLine.Run(["draft", _scratch.Put("buoys.chords", Sheet), "--out", _scratch.At("first")], output, error, interrupted.Token));
        Assert.Equal(("", "interrupted; nothing is half written\n"), (output.ToString(), error.ToString()));
        Assert.Equal(["buoys.chords"], _scratch.Names());
    }

    [Theory]
    [InlineData("--tempo", "\u001b[31m")]
    [InlineData("--tempo", "9\u202e9")]
    [InlineData("--tower", "quay\nwrote all.mid")]
    public async Task Option_values_are_shown_as_what_they_are(string option, string value)
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), option, value);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains(Revoicer.Text.VisibleText.OneLine(value), ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(value, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_title_is_shown_as_what_it_is_and_its_score_keeps_it()
    {
        const string title = "Two \u202eBuoys";
        _scratch.Put("buoys.chords", Sheet);
        await Ran.Of("draft", _scratch.At("buoys.chords"), "--out", _scratch.At("score"));
        var score = await File.ReadAllTextAsync(_scratch.At("score.musicxml"), TestContext.Current.CancellationToken);
        _scratch.Put("score.musicxml", score.Replace("<work-title>Two Buoys", $"<work-title>{title}", StringComparison.Ordinal));
        var ran = await Shell("draft score.musicxml --out first");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.StartsWith("Two \\u202eBuoys: 3 chords voiced", ran.Output, StringComparison.Ordinal);
        Assert.Contains(title, await File.ReadAllTextAsync(_scratch.At("first.json"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static string Program
    {
        get
        {
            Assert.SkipUnless(OperatingSystem.IsLinux(), "the shell and the devices of Linux are needed");
            return Path.Combine(AppContext.BaseDirectory, "revoicer");
        }
    }

    private Task<Ran> Shell(string command, string before = "") =>
        Run("/bin/sh", "-c", $"cd '{_scratch.At("")}' && {before}'{Program}' {command}{(before.Length > 0 ? ")" : "")}");

    private static async Task<Ran> Run(string program, params string[] args)
    {
        using var process = Start(program, args);
        return await Ended(process);
    }

    private static Process Start(string program, params string[] args) =>
        Process.Start(new ProcessStartInfo(program, args) { RedirectStandardOutput = true, RedirectStandardError = true })!;

    private static async Task<Ran> Ended(Process process)
    {
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return new Ran(process.ExitCode, await output, await error);
    }
}
