using System.CommandLine;

namespace Revoicer.Cli.Settings;

/// <summary>A command that shows what ships of one kind of settings, and checks the player's own.</summary>
internal static class SettingsCommand
{
    /// <summary>Makes the command.</summary>
    /// <param name="name">What is typed.</param>
    /// <param name="description">For the help, with an example.</param>
    /// <param name="shipped">The kind of settings.</param>
    /// <param name="overview">What is said where none is named.</param>
    /// <param name="describe">One of them in words.</param>
    public static Command Make<T>(string name, string description, Shipped<T> shipped, Func<string> overview, Func<T, string> describe)
        where T : class
    {
        var which = new Argument<string?>(shipped.Kind.ToUpperInvariant())
        {
            Description = $"the name of a {shipped.Kind} that ships, or a file of your own, which is checked; none: what ships",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var file = new Option<bool>("--show-file") { Description = $"show the file of a {shipped.Kind} that ships, as a pattern for your own" };
        var command = new Command(name, description) { which, file };
        command.SetAction(parsed =>
        {
            var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
            switch (parsed.GetValue(which), parsed.GetValue(file))
            {
                case (null, false):
                    output.Write(overview());
                    return ExitCode.Done;
                case ({ } shown, true) when shipped.Names.Contains(shown):
                    output.Write(shipped.TextOf(shown));
                    return ExitCode.Done;
                case (_, true):
                    error.Write($"revoicer: --show-file shows the file of a {shipped.Kind} that ships; expected one of {string.Join(", ", shipped.Names)}\n");
                    return ExitCode.WrongUsage;
                case ({ } named, false):
                    if (shipped.Find(named, error) is not { } found)
                    {
                        return ExitCode.WrongUsage;
                    }

                    output.Write(describe(found));
                    return ExitCode.Done;
            }
        });
        return command;
    }
}
