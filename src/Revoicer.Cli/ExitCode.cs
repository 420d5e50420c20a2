namespace Revoicer.Cli;

/// <summary>How the program ends.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The sheet can be read but not played here.</summary>
    public const int NotPlayable = 1;

    /// <summary>Wrong usage, or an input that cannot be read.</summary>
    public const int WrongUsage = 2;

    /// <summary>A result could not be written.</summary>
    public const int NotWritten = 3;

    /// <summary>Interrupted by the player.</summary>
    public const int Interrupted = 130;

    /// <summary>The same for the help.</summary>
    public const string Help =
        "Exit codes: 0 done; 1 readable but not playable here; 2 wrong usage or unreadable input; 3 could not write; 130 interrupted.";
}
