using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Revoicer.Cli.Audits;
using Revoicer.Cli.Comparisons;
using Revoicer.Cli.Drafts;
using Revoicer.Cli.Revoices;
using Revoicer.Cli.Settings;

namespace Revoicer.Cli;

/// <summary>The program's commands; from what was typed to an exit code.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command.</summary>
    /// <param name="args">What was typed after the program's name.</param>
    /// <param name="output">For results.</param>
    /// <param name="error">For problems and progress.</param>
    public static async Task<int> Run(IReadOnlyList<string> args, TextWriter output, TextWriter error)
    {
        try
        {
            var parsed = Root().Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parsed.Errors.Count > 0)
            {
                return WrongUsage(parsed, error);
            }

            var invocation = new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false };
            return await parsed.InvokeAsync(invocation);
        }
        catch (OperationCanceledException)
        {
            error.Write("interrupted; nothing was written\n");
            return ExitCode.Interrupted;
        }
        catch (IOException e) when (Pipes.IsBroken(e))
        {
            return ExitCode.Done;
        }
    }

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
            error.Write($"revoicer: {problem.Message}\n");
        }

        var command = parsed.CommandResult.Command is RootCommand ? "" : parsed.CommandResult.Command.Name + " ";
        error.Write($"try 'revoicer {command}--help'\n");
        return ExitCode.WrongUsage;
    }
}
