using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Revoicer.Cli.Audits;
using Revoicer.Cli.Comparisons;
using Revoicer.Cli.Drafts;
using Revoicer.Cli.Files;
using Revoicer.Cli.Revoices;
using Revoicer.Cli.Settings;
using Revoicer.Cli.Streams;
using Revoicer.Values;

namespace Revoicer.Cli;

/// <summary>The program's commands; from what was typed to an exit code.</summary>
internal static class CommandLine
{
    // What has not stopped by then ends with the process.
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(0.1);

    /// <summary>Runs one command.</summary>
    /// <param name="args">What was typed after the program's name.</param>
    /// <param name="output">For results.</param>
    /// <param name="error">For problems and progress.</param>
    /// <param name="interrupted">Cancelled when the player breaks off.</param>
    public static int Run(IReadOnlyList<string> args, TextWriter output, TextWriter error, CancellationToken interrupted)
    {
        try
        {
            var parsed = Root().Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parsed.Errors.Count > 0)
            {
                return WrongUsage(parsed, error);
            }

            (output as StandardStream)?.MustBeOpen();
            var invocation = new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
            return End(Task.Run(() => parsed.InvokeAsync(invocation, interrupted), CancellationToken.None), interrupted);
        }
        catch (Exception e) when (interrupted.IsCancellationRequested && BrokenOff.Is(e))
        {
            return Unless(() => error.Say("interrupted; nothing is half written"), ExitCode.Interrupted);
        }
        catch (UnwritableException e)
        {
            return Unless(() => Other(e.Stream, output, error)?.Say(e.Sentence), ExitCode.NotWritten);
        }
        catch (IOException e) when (Pipes.IsBroken(e))
        {
            return ExitCode.Done;
        }
    }

    // The calling thread waits itself, as all others may be at work when the player breaks off.
    private static int End(Task<int> work, CancellationToken interrupted)
    {
        WaitHandle.WaitAny([((IAsyncResult)work).AsyncWaitHandle, interrupted.WaitHandle]);
        if (!work.IsCompleted && Task.WaitAny([work], Grace) < 0)
        {
            OutputFiles.AwaitWriting();
            throw new OperationCanceledException(interrupted);
        }

        return work.GetAwaiter().GetResult();
    }

    private static int Unless(Action say, int exitCode)
    {
        try
        {
            say();
            return exitCode;
        }
        catch (Exception e) when (e is UnwritableException or IOException)
        {
            return ExitCode.NotWritten;
        }
    }

    // Where one stream fails the other tells; the results only where none has been begun, as a program may read them.
    private static TextWriter? Other(StandardStream failed, TextWriter output, TextWriter error) =>
        ReferenceEquals(failed, output) ? error
        : output is StandardStream { IsUntouched: false } ? null
        : output;

    private static RootCommand Root()
    {
        var root = new RootCommand(
            "Revoicer turns lead sheets into music for a tower carillon: it chooses bells, limbs and times of every chord so that "
            + "the bells clash least, and says why.\n\n" + Cautions.Text + "\n\n" + ExitCode.Help)
        {
            DraftCommand.Make(),
            RevoiceCommand.Make(),
            AuditCommand.Make(),
            CompareCommand.Make(),
            TowersCommand.Make(),
            SoundsCommand.Make(),
        };
        root.SetAction(parsed =>
        {
            new HelpAction().Invoke(parsed);
            return ExitCode.WrongUsage;
        });
        return root;
    }

    private static int WrongUsage(ParseResult parsed, TextWriter error)
    {
        foreach (var problem in parsed.Errors)
        {
            error.Say($"revoicer: {problem.Message}");
        }

        var command = parsed.CommandResult.Command is RootCommand ? "" : parsed.CommandResult.Command.Name + " ";
        error.Say($"try 'revoicer {command}--help'");
        return ExitCode.WrongUsage;
    }
}
