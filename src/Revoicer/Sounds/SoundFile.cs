using Revoicer.Text;

namespace Revoicer.Sounds;

/// <summary>Reads a sound setting from its file: every word once, none missing, none unknown, none negative.</summary>
public static class SoundFile
{
    /// <summary>Reads a sound.</summary>
    /// <param name="fileName">The file's name, for messages.</param>
    /// <param name="text">Its text, TOML.</param>
    /// <returns>The sound, or all that is wrong (the first hundred), in the order of the file.</returns>
    public static Reading<Sound> Read(string fileName, string text)
    {
        var problems = new List<Problem>();
        var sound = TomlText.Read(fileName, text, problems) is { } toml ? Read(toml, problems) : null;
        return sound is not null && problems.Count == 0
            ? Reading<Sound>.Of(sound)
            : new Reading<Sound>.Refused(FirstProblems.Of(problems));
    }

    private static Sound? Read(TomlText toml, List<Problem> problems)
    {
        toml.Head.KnowsOnly("name");
        toml.Head.Needs("name");
        var name = toml.Head.Text("name");
        var parts = SoundWords.All.Select(l => l.Part).Distinct().ToArray();
        var values = new Dictionary<(string, string), double>();
        var seen = new HashSet<string>();
        foreach (var section in toml.Sections)
        {
            if (section.IsOneOfMany || !parts.Contains(section.Name) || !seen.Add(section.Name))
            {
                problems.Add(new Problem(section.Where, $"'{section.Name}' is no part of a sound, or stands twice", $"one each of [{string.Join("], [", parts)}]"));
                continue;
            }

            ReadPart(section, values, problems);
        }

        foreach (var part in parts.Except(seen))
        {
            problems.Add(new Problem(toml.Head.PlaceOf("name"), $"the file has no part [{part}]", $"[{part}] and its lines"));
        }

        return name is not null && values.Count == SoundWords.All.Length ? ToSound(name.Value, values, problems, toml) : null;
    }

    private static void ReadPart(TomlSection section, Dictionary<(string, string), double> values, List<Problem> problems)
    {
        var lines = SoundWords.All.Where(l => l.Part == section.Name).ToArray();
        string[] words = [.. lines.Select(l => l.Word)];
        section.KnowsOnly(words);
        section.Needs(words);
        foreach (var line in lines)
        {
            if (section.Number(line.Word, line.Lowest, line.Highest, line.RangeUnit) is { } number)
            {
                values[(line.Part, line.Word)] = number.Value;
            }
        }
    }

    private static Sound? ToSound(string name, Dictionary<(string, string), double> values, List<Problem> problems, TomlText toml)
    {
        foreach (var word in SoundWords.All.Where(w => w.IsWhole && values[(w.Part, w.Word)] % 1 != 0))
        {
            problems.Add(new Problem(toml.Sections.First(s => s.Name == word.Part).PlaceOf(word.Word), $"'{word.Word}' is no whole number", $"a whole number from {word.Lowest} to {word.Highest}"));
            return null;
        }

        return SoundWords.All.Aggregate(new Sound { Name = name }, (sound, word) => word.With(sound, values[(word.Part, word.Word)]));
    }
}
