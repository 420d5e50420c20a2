using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Sounds;

/// <summary>Reads a sound setting from its file: every word once, none missing, none unknown, none negative.</summary>
public static class SoundFile
{
    // A price above this is no trade-off any more; a rule says it better.
    private const double DearestPrice = 1000;

    private static readonly Line[] Lines =
    [
        Line.Price("clash", "weight", s => s.Clash),
        new("clash", "fade", 0, 60, " s (0 for none)", s => s.Fade?.Value ?? 0),
        Line.Price("tones", "root", s => s.MissingRoot),
        Line.Price("tones", "third", s => s.MissingThird),
        Line.Price("tones", "seventh", s => s.MissingSeventh),
        Line.Price("tones", "fifth", s => s.MissingFifth),
        Line.Price("tones", "colour", s => s.MissingColour),
        Line.Price("tones", "doubled", s => s.Doubled),
        Line.Price("tones", "thin", s => s.Thin),
        Line.Price("bass", "third", s => s.ThirdInBass),
        Line.Price("bass", "other", s => s.OtherBass),
        Line.Price("bass", "weak-beat", s => s.WeakBeatBass),
        Line.Price("bass", "none", s => s.NoBass),
        Line.Price("bass", "height", s => s.BassHeight),
        Line.Price("bass", "leap", s => s.BassLeap),
        new("bass", "strong-beats", 0, 1, "", s => s.StrongBeatsWithBass),
        Line.Price("figures", "roll-forgone", s => s.RollForgone),
        Line.Price("figures", "rolled", s => s.Rolled),
        Line.Price("figures", "bass-first", s => s.BassFirst),
        Line.Price("figures", "afterbeats", s => s.Afterbeats),
        Line.Price("figures", "broken", s => s.Broken),
        Line.Price("figures", "change", s => s.FigureChange),
        new("figures", "rolls-in-phrase", 0, 99, "", s => s.RollsPerPhrase),
        new("figures", "roll-step", 0.04, 0.09, " s", s => s.RollStep.Value),
        new("touch", "tune", -12, 12, " dB", s => s.TuneTouch.Value),
        new("touch", "heavy", -12, 12, " dB", s => s.HeavyTouch.Value),
        new("carry", "target", -60, 60, " dB", s => s.CarryTarget.Value),
        Line.Price("carry", "shortfall", s => s.CarryShortfall),
        new("brightness", "target", 20, 20000, " Hz", s => s.BrightnessTarget.Value),
        Line.Price("brightness", "shortfall", s => s.BrightnessShortfall),
        Line.Price("lines", "voice-leading", s => s.VoiceLeading),
        Line.Price("lines", "gap", s => s.Gap),
        Line.Price("effort", "weight", s => s.Effort),
    ];

    /// <summary>Reads a sound.</summary>
    /// <param name="fileName">The file's name, for messages.</param>
    /// <param name="text">Its text, TOML.</param>
    /// <returns>The sound, or all that is wrong, in the order of the file.</returns>
    public static Reading<Sound> Read(string fileName, string text)
    {
        var problems = new List<Problem>();
        var sound = TomlText.Read(fileName, text, problems) is { } toml ? Read(toml, problems) : null;
        return sound is not null && problems.Count == 0
            ? Reading<Sound>.Of(sound)
            : new Reading<Sound>.Refused(problems.OrderBy(p => p.Where.Line).ThenBy(p => p.Where.Column).ToItems());
    }

    /// <summary>Every word of a sound with its part and value, in the order of a file.</summary>
    public static IEnumerable<(string Part, string Word, double Value)> Words(Sound sound) =>
        Lines.Select(line => (line.Part, line.Word, line.Of(sound)));

    private static Sound? Read(TomlText toml, List<Problem> problems)
    {
        toml.Head.KnowsOnly("name");
        toml.Head.Needs("name");
        var name = toml.Head.Text("name");
        var parts = Lines.Select(l => l.Part).Distinct().ToArray();
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

        return name is not null && values.Count == Lines.Length ? ToSound(name.Value, values, problems, toml) : null;
    }

    private static void ReadPart(TomlSection section, Dictionary<(string, string), double> values, List<Problem> problems)
    {
        var lines = Lines.Where(l => l.Part == section.Name).ToArray();
        string[] words = [.. lines.Select(l => l.Word)];
        section.KnowsOnly(words);
        section.Needs(words);
        foreach (var line in lines)
        {
            if (section.Number(line.Word, line.Lowest, line.Highest, line.Unit) is { } number)
            {
                values[(line.Part, line.Word)] = number.Value;
            }
        }
    }

    private static Sound? ToSound(string name, Dictionary<(string, string), double> values, List<Problem> problems, TomlText toml)
    {
        double Value(string part, string word) => values[(part, word)];
        var rolls = Value("figures", "rolls-in-phrase");
        if (rolls != Math.Floor(rolls))
        {
            problems.Add(new Problem(toml.Sections.First(s => s.Name == "figures").PlaceOf("rolls-in-phrase"), $"'rolls-in-phrase' is no whole number", "a whole number from 0 to 99"));
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
            Doubled = Value("tones", "doubled"),
            Thin = Value("tones", "thin"),
            ThirdInBass = Value("bass", "third"),
            OtherBass = Value("bass", "other"),
            WeakBeatBass = Value("bass", "weak-beat"),
            NoBass = Value("bass", "none"),
            BassHeight = Value("bass", "height"),
            BassLeap = Value("bass", "leap"),
            StrongBeatsWithBass = Value("bass", "strong-beats"),
            RollForgone = Value("figures", "roll-forgone"),
            Rolled = Value("figures", "rolled"),
            BassFirst = Value("figures", "bass-first"),
            Afterbeats = Value("figures", "afterbeats"),
            Broken = Value("figures", "broken"),
            FigureChange = Value("figures", "change"),
            RollsPerPhrase = (int)rolls,
            RollStep = new Seconds(Value("figures", "roll-step")),
            TuneTouch = new Decibels(Value("touch", "tune")),
            HeavyTouch = new Decibels(Value("touch", "heavy")),
            CarryTarget = new Decibels(Value("carry", "target")),
            CarryShortfall = Value("carry", "shortfall"),
            BrightnessTarget = new Hertz(Value("brightness", "target")),
            BrightnessShortfall = Value("brightness", "shortfall"),
            VoiceLeading = Value("lines", "voice-leading"),
            Gap = Value("lines", "gap"),
            Effort = Value("effort", "weight"),
        };
    }

    private sealed record Line(string Part, string Word, double Lowest, double Highest, string Unit, Func<Sound, double> Of)
    {
        public static Line Price(string part, string word, Func<Sound, double> of) => new(part, word, 0, DearestPrice, "", of);
    }
}
