using System.CommandLine;
using Revoicer.Cli.Streams;

namespace Revoicer.Cli.Settings;

/// <summary>The commands that list what ships of a kind of settings, show one, check the player's own.</summary>
/// <typeparam name="T">What the settings describe.</typeparam>
/// <param name="kind">The kind.</param>
/// <param name="list">What is said where none is named.</param>
/// <param name="summary">One of them in words.</param>
internal sealed class SettingsCommand<T>(SettingsKind<T> kind, Func<string> list, Func<T, string> summary)
    where T : class
{
    /// <summary>The command, under a name and with its help.</summary>
    public Command Make(string name, string help)
    {
        var which = new Argument<string?>("NAME or FILE")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = $"a {kind.Word} that ships ({string.Join(", ", kind.Names)}), or a file of your own to check",
        };
        var print = new Option<bool>("--print") { Description = $"print the file of a {kind.Word} that ships, as a pattern for your own" };
        var command = new Command(name, help) { which, print };
        command.SetAction(parsed => Run(
            parsed.GetValue(which),
            parsed.GetValue(print),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error));
        return command;
    }

    private int Run(string? which, bool print, TextWriter output, TextWriter error)
    {
        if (print)
        {
            return Print(which, output, error);
        }

        if (which is null)
        {
            output.Write(list());
            return ExitCode.Done;
        }

        if (kind.Open(which, error) is not { } settings)
        {
            return ExitCode.WrongUsage;
        }

        output.Say($"This {kind.Word} is {settings.Source}.");
        output.Write($"\n{summary(settings.Value)}");
        return ExitCode.Done;
    }

    private int Print(string? which, TextWriter output, TextWriter error)
    {
        if (which is not null && kind.Names.Contains(which))
        {
            output.Write(kind.Shipped(which));
            return ExitCode.Done;
        }

        var wrong = which is null ? $"--print needs the name of a {kind.Word}" : $"{which}: --print shows a {kind.Word} that ships, and none of that name does";
        error.Say($"{wrong}; expected one of {string.Join(", ", kind.Names)}");
        return ExitCode.WrongUsage;
    }
}
