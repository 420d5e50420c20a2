using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>Makes a tower's bells: default ones from the law, measured ones from what the file says, the law filling in.</summary>
internal sealed class BellMaker(
    BellLaw law, Tuning tuning, Transposition transposition, List<Problem> problems, List<Problem> warnings)
{
    // More partials than anyone tells apart in a recorded stroke; bounds the work on a hostile file.
    private const int MostPartials = 32;

    // A measured partial further than this from where the law has it is likely under a wrong name (semitones; estimate).
    private const double FarOff = 2;

    /// <summary>A bell for every key.</summary>
    public Items<Bell> Bells(IReadOnlyList<WrittenNote> keys, IReadOnlyList<BellEntry> entries)
    {
        var byKey = new Dictionary<WrittenNote, BellEntry>();
        foreach (var entry in entries)
        {
            if (entry.Key is not { } key)
            {
                continue;
            }

            if (!keys.Contains(key.Value))
            {
                problems.Add(new Problem(key.Where, $"the tower has no bell on {key.Value}", "a key of the compass that is not missing"));
            }
            else if (!byKey.TryAdd(key.Value, entry))
            {
                problems.Add(new Problem(key.Where, $"the bell on {key.Value} is given twice", "one [[bell]] for a key"));
            }
        }

        return keys.Select(k => Bell(k, byKey.GetValueOrDefault(k))).ToItems();
    }

    private Bell Bell(WrittenNote key, BellEntry? entry)
    {
        var strikeNote = key + transposition;
        var tuned = tuning.Of(strikeNote);
        if (entry is null || entry.Partials.Count == 0)
        {
            return law.BellAt(key, strikeNote, tuned, entry?.Level ?? Decibels.Zero);
        }

        // The strike note is heard an octave below the nominal, whatever the tuning says.
        var nominal = entry.Partials.FirstOrDefault(p => p.Name.Value == "nominal");
        var strike = nominal is null ? tuned : new Hertz(nominal.Frequency.Value.Value / 2);
        var partials = law.PartialsAt(strike).ToDictionary(p => p.Name);
        CheckNames(key, entry.Partials);
        foreach (var measured in entry.Partials)
        {
            if (Merged(key, measured, partials.GetValueOrDefault(measured.Name.Value)) is { } partial)
            {
                partials[partial.Name] = partial;
            }
        }

        WarnOfFarOff(key, entry.Partials, tuned);
        return new Bell(key, strikeNote, strike, BellLaw.Scaled(partials.Values, entry.Level), IsMeasured: true);
    }

    private void CheckNames(WrittenNote key, List<PartialEntry> partials)
    {
        var names = new HashSet<string>();
        foreach (var partial in partials.Where(p => !names.Add(p.Name.Value)))
        {
            problems.Add(new Problem(partial.Name.Where, $"the bell on {key} has '{partial.Name.Value}' twice", "every partial once"));
        }

        if (partials.Count > MostPartials)
        {
            problems.Add(new Problem(partials[MostPartials].Name.Where, $"the bell on {key} has {partials.Count} partials", $"at most {MostPartials}"));
        }
    }

    private LevelledPartial? Merged(WrittenNote key, PartialEntry measured, LevelledPartial? usual)
    {
        if ((measured.Level ?? usual?.Level) is { } level && (measured.Decay ?? usual?.Decay) is { } decay)
        {
            return new LevelledPartial(measured.Name.Value, measured.Frequency.Value, level, decay);
        }

        problems.Add(new Problem(
            measured.Name.Where,
            $"'{measured.Name.Value}' on {key} is no partial the default bell has, and its level or t60 is missing",
            "both, or one of " + string.Join(", ", law.PartialNames)));
        return null;
    }

    private void WarnOfFarOff(WrittenNote key, List<PartialEntry> partials, Hertz tuned)
    {
        var usual = law.PartialsAt(tuned).ToDictionary(p => p.Name, p => p.Frequency);
        foreach (var partial in partials.Where(p => usual.ContainsKey(p.Name.Value)))
        {
            var expected = usual[partial.Name.Value];
            var semitones = 12 * Math.Log2(partial.Frequency.Value.Value / expected.Value);
            if (Math.Abs(semitones) > FarOff)
            {
                warnings.Add(new Problem(
                    partial.Frequency.Where,
                    FormattableString.Invariant($"the {partial.Name.Value} of {key} lies {Math.Abs(semitones):0.0} semitones {(semitones > 0 ? "above" : "below")} that of a default bell"),
                    $"about {expected}; check its name, and 'sounds' and 'pitch' of the tower"));
            }
        }
    }
}
