using Revoicer.Text;

namespace Revoicer.Bells;

/// <summary>Reads a tower from its file; docs/files.md describes the words and shows an example.</summary>
public static class TowerFile
{
    /// <summary>Reads a tower.</summary>
    /// <param name="fileName">The file's name, for messages.</param>
    /// <param name="text">Its text, TOML.</param>
    /// <returns>
    /// The tower, with warnings where a measured partial lies far from where a bell of its strike note has it; or all
    /// that is wrong (the first hundred), in the order of the file.
    /// </returns>
    public static Reading<Tower> Read(string fileName, string text)
    {
        var problems = new List<Problem>();
        var warnings = new List<Problem>();
        var tower = TomlText.Read(fileName, text, problems) is { } toml
            ? new TowerReader(toml, BellLaw.Default, problems, warnings).Read()
            : null;
        return tower is not null && problems.Count == 0
            ? new Reading<Tower>.Accepted(tower, FirstProblems.Of(warnings))
            : new Reading<Tower>.Refused(FirstProblems.Of(problems));
    }
}
