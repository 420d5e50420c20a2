namespace Revoicer.Cli.Tests;

/// <summary>One run of the program inside the test: what it ended with and what it said.</summary>
internal sealed record Ran(int ExitCode, string Output, string Error)
{
    public static async Task<Ran> Of(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var exitCode = await Task.Factory.StartNew(() => CommandLine.Run(args, output, error, CancellationToken.None), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        return new Ran(exitCode, output.ToString(), error.ToString());
    }
}
