using Revoicer.Text;
using Revoicer.Values;

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
        double Value(string part, string word) => values[(part, word)];
        foreach (var (part, word) in new[] { ("bass", "approaches-in-phrase"), ("figures", "rolls-in-phrase") }.Where(w => Value(w.Item1, w.Item2) % 1 != 0))
        {
            problems.Add(new Problem(toml.Sections.First(s => s.Name == part).PlaceOf(word), $"'{word}' is no whole number", "a whole number from 0 to 99"));
            return null;
        }

        return new Sound
        {
            Name = name,
            Clash = Value("clash", "weight"),
            Fade = Value("clash", "fade") is > 0 and var fade ? new Seconds(fade) : null,
            MissingRoot = Value("tones", "root"),
            MissingThird = Value("tones", "third"),
            MissingSeventh = Value("tones", "seventh"),
            MissingFifth = Value("tones", "fifth"),
            MissingColour = Value("tones", "colour"),
            BareHands = Value("tones", "bare-hands"),
            LowThird = Value("tones", "low-third"),
            Doubled = Value("tones", "doubled"),
            FullChord = Value("tones", "bells"),
            Thin = Value("tones", "thin"),
            ThirdInBass = Value("bass", "third"),
            OtherBass = Value("bass", "other"),
            WeakBeatBass = Value("bass", "weak-beat"),
            NoBass = Value("bass", "none"),
            BassHeight = Value("bass", "height"),
            DeepBass = Value("bass", "deep"),
            BassLeap = Value("bass", "leap"),
            BassStep = Value("bass", "step"),
            BassAgain = Value("bass", "again"),
            ApproachForgone = Value("bass", "approach-forgone"),
            ApproachesPerPhrase = (int)Value("bass", "approaches-in-phrase"),
            StrongBeatsWithBass = Value("bass", "strong-beats"),
            RollForgone = Value("figures", "roll-forgone"),
            Rolled = Value("figures", "rolled"),
            BassFirst = Value("figures", "bass-first"),
            Afterbeats = Value("figures", "afterbeats"),
            Broken = Value("figures", "broken"),
            InTenths = Value("figures", "in-tenths"),
            FigureChange = Value("figures", "change"),
            RollsPerPhrase = (int)Value("figures", "rolls-in-phrase"),
            OneFigure = Value("figures", "one-figure"),
            RollStep = new Seconds(Value("figures", "roll-step")),
            TuneTouch = new Decibels(Value("touch", "tune")),
            HeavyTouch = new Decibels(Value("touch", "heavy")),
            CarryTarget = new Decibels(Value("carry", "target")),
            CarryAtLeast = new Decibels(Value("carry", "at-least")),
            CarryShortfall = Value("carry", "shortfall"),
            BrightnessTarget = new Hertz(Value("brightness", "target")),
            BrightnessShortfall = Value("brightness", "shortfall"),
            VoiceLeading = Value("lines", "voice-leading"),
            Gap = Value("lines", "gap"),
            Tendency = Value("lines", "tendency"),
            NumberOfTones = Value("lines", "number"),
            TopLeap = Value("lines", "top-leap"),
            TopAgain = Value("lines", "top-again"),
            Home = Value("tune", "home"),
            NearTune = Value("tune", "near"),
            Drowned = Value("tune", "drowned"),
            Effort = Value("effort", "weight"),
        };
    }
}
