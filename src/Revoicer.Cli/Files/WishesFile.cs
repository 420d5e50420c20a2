using Revoicer.LeadSheets.Wishes;
using Revoicer.Voicings;

namespace Revoicer.Cli.Files;

/// <summary>Reads a player's wishes from disk.</summary>
internal static class WishesFile
{
    private const int LargestBytes = 1024 * 1024;

    /// <summary>The wishes, none where no file is named; null, with every problem told, where the file cannot be read.</summary>
    public static PlayerWishes? Read(string? path, TextWriter error)
    {
        if (path is null)
        {
            return PlayerWishes.None;
        }

        return TextFile.Read(path, "a wishes file", LargestBytes, error) is { } text
            ? Told.Value(WishFile.Read(path, text, FigureNames.All), error)
            : null;
    }
}
