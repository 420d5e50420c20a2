using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Wishes;

/// <summary>Reads a player's wishes from their file; docs/files.md describes the words and shows an example.</summary>
public static class WishFile
{
    /// <summary>Reads the wishes.</summary>
    /// <param name="fileName">The file's name, for messages.</param>
    /// <param name="text">Its text, TOML.</param>
    /// <param name="figures">The names of the figures there are.</param>
    /// <returns>The wishes, or all that is wrong (the first hundred), in the order of the file.</returns>
    public static Reading<PlayerWishes> Read(string fileName, string text, IReadOnlyCollection<string> figures)
    {
        var problems = new List<Problem>();
        var wishes = TomlText.Read(fileName, text, problems) is { } toml
            ? new WishReader(toml, figures, problems).Read()
            : PlayerWishes.None;
        return problems.Count == 0
            ? Reading<PlayerWishes>.Of(wishes)
            : new Reading<PlayerWishes>.Refused(FirstProblems.Of(problems));
    }
}
