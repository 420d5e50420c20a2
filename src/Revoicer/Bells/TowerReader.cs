using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>Makes a tower of the words of its file. A value that is wrong is reported and left out, so that all problems come to light.</summary>
internal sealed class TowerReader(TomlText toml, BellLaw law, List<Problem> problems, List<Problem> warnings)
{
    private static readonly string[] HeadWords =
        ["name", "lowest", "highest", "missing", "pedals", "sounds", "pitch", "cents", "home", "home-below"];

    // Tower carillons have up to some 77 bells (common practice), pedals over two octaves and a half at most
    // (../shared/reference/towers.tsv). A little more is read; far more would cost the search minutes for nothing.
    private const int MostBells = 80;
    private const int MostPedals = 37;

    private readonly KeyWords _keys = new(problems);

    /// <summary>The tower; null, with problems added, where something it cannot do without is missing or wrong.</summary>
    public Tower? Read()
    {
        var head = toml.Head;
        head.KnowsOnly(HeadWords);
        head.Needs("name", "lowest", "highest", "pedals", "sounds");
        var name = head.Text("name");
        var sounds = head.Whole("sounds", -24, 36, " semitones");
        var tuning = ReadTuning(head);
        var keys = ReadKeys(head);
        var pedals = ReadPedals(head, keys);
        var (home, below) = (_keys.Home(head, "home", keys), _keys.Home(head, "home-below", keys));
        var (limits, bells) = ReadParts();

        if (name is null || sounds is null || keys is null)
        {
            return null;
        }

        var transposition = new Transposition(sounds.Value);
        if (!StrikesExist(keys, sounds) || pedals is null)
        {
            return null;
        }

        var maker = new BellMaker(law, tuning, transposition, problems, warnings);
        var tower = new Tower(
            name.Value,
            maker.Bells(keys, bells),
            pedals.Value.From,
            pedals.Value.To,
            transposition,
            limits);
        return tower with { Home = home ?? tower.Home, HomeBelow = below ?? tower.HomeBelow };
    }

    private static Tuning ReadTuning(TomlSection head)
    {
        var pitch = head.Number("pitch", 300, 600, " Hz")?.Value ?? Tuning.Concert.A4.Value;
        return new Tuning(new Hertz(pitch)).Raised(head.Number("cents", -100, 100, " cents")?.Value ?? 0);
    }

    // The keys that have a bell, lowest first.
    private List<WrittenNote>? ReadKeys(TomlSection head)
    {
        var lowest = _keys.Note(head.Text("lowest"));
        var highest = _keys.Note(head.Text("highest"));
        var missing = (head.Texts("missing") ?? []).Select(_keys.Note).OfType<TomlWord<WrittenNote>>().ToList();
        if (lowest is null || highest is null)
        {
            return null;
        }

        if (lowest.Value > highest.Value)
        {
            problems.Add(new Problem(highest.Where, $"the highest key {highest.Value} lies below the lowest, {lowest.Value}", "a compass upward"));
            return null;
        }

        var absent = Absent(missing, lowest.Value, highest.Value);
        List<WrittenNote> keys = [.. Enumerable.Range(lowest.Value.Midi, highest.Value.Midi - lowest.Value.Midi + 1)
            .Select(WrittenNote.AtMidi)
            .Where(n => !absent.Contains(n))];
        if (keys.Count > MostBells)
        {
            problems.Add(new Problem(highest.Where, $"from {lowest.Value} to {highest.Value} there are {keys.Count} bells", $"at most {MostBells}"));
        }

        return keys;
    }

    private HashSet<WrittenNote> Absent(List<TomlWord<WrittenNote>> missing, WrittenNote lowest, WrittenNote highest)
    {
        var absent = new HashSet<WrittenNote>();
        foreach (var key in missing)
        {
            if (key.Value <= lowest || key.Value >= highest)
            {
                problems.Add(new Problem(key.Where, $"{key.Value} does not lie inside the compass", $"a key between {lowest} and {highest}"));
            }
            else if (!absent.Add(key.Value))
            {
                problems.Add(new Problem(key.Where, $"{key.Value} is named twice", "every missing key once"));
            }
        }

        return absent;
    }

    private (WrittenNote From, WrittenNote To)? ReadPedals(TomlSection head, List<WrittenNote>? keys)
    {
        if (head.Texts("pedals") is not { } texts)
        {
            return null;
        }

        var ends = texts.Select(_keys.Note).OfType<TomlWord<WrittenNote>>().ToList();
        if (ends.Count != 2 || ends[0].Value > ends[1].Value)
        {
            problems.Add(new Problem(head.PlaceOf("pedals"), "'pedals' does not name a row of pedals", "two keys, the lowest and the highest: [\"C3\", \"G4\"]"));
            return null;
        }

        if ((ends[1].Value - ends[0].Value).Semitones >= MostPedals)
        {
            problems.Add(new Problem(head.PlaceOf("pedals"), $"from {ends[0].Value} to {ends[1].Value} there are more pedals than two feet can serve", $"at most {MostPedals} keys, three octaves"));
        }

        foreach (var end in ends.Where(e => keys is not null && (e.Value < keys[0] || e.Value > keys[^1])))
        {
            problems.Add(new Problem(end.Where, $"the pedal {end.Value} does not lie in the compass", $"a key from {keys![0]} to {keys[^1]}"));
        }

        return (ends[0].Value, ends[1].Value);
    }

    private (Items<LimitOverride> Limits, List<BellEntry> Bells) ReadParts()
    {
        Items<LimitOverride> limits = [];
        var bells = new List<BellEntry>();
        TomlSection? firstLimits = null;
        foreach (var part in toml.Sections)
        {
            switch (part)
            {
                case { Name: "limits", IsOneOfMany: false } when firstLimits is null:
                    firstLimits = part;
                    limits = ReadLimits(part);
                    break;
                case { Name: "bell", IsOneOfMany: true }:
                    bells.Add(ReadBell(part));
                    break;
                case { Name: "bell.partial", IsOneOfMany: true } when bells.Count > 0:
                    ReadPartial(part, bells[^1]);
                    break;
                default:
                    problems.Add(Misplaced(part));
                    break;
            }
        }

        return (limits, bells);
    }

    private static Problem Misplaced(TomlSection part) => part switch
    {
        { Name: "limits", IsOneOfMany: false } => new Problem(part.Where, "[limits] is given twice", "one part [limits]"),
        { Name: "limits" } => new Problem(part.Where, "'limits' stands in double brackets", "[limits]"),
        { Name: "bell.partial", IsOneOfMany: true } => new Problem(part.Where, "a partial stands before any bell", "[[bell]] with its key above"),
        { Name: "bell" or "bell.partial", IsOneOfMany: false } => new Problem(part.Where, $"'{part.Name}' stands in single brackets", $"[[{part.Name}]]"),
        _ => new Problem(part.Where, $"'{part.Name}' is no part of a tower file", "[limits], [[bell]] or [[bell.partial]]"),
    };

    private static Items<LimitOverride> ReadLimits(TomlSection part)
    {
        part.KnowsOnly(LimitKeys.All);
        var limits = new List<LimitOverride>();
        foreach (var (key, highest, unit) in LimitKeys.Ranges)
        {
            if (part.Inner(key) is { } row)
            {
                row.KnowsOnly("hard", "soft");
                limits.Add(new LimitOverride(key, row.Number("hard", 0, highest, unit)?.Value, row.Number("soft", 0, highest, unit)?.Value));
            }
        }

        return [.. limits];
    }

    private BellEntry ReadBell(TomlSection part)
    {
        part.KnowsOnly("key", "level");
        part.Needs("key");
        var level = part.Number("level", -40, 20, " dB")?.Value ?? 0;
        return new BellEntry(_keys.Note(part.Text("key")), new Decibels(level), []);
    }

    private static void ReadPartial(TomlSection part, BellEntry bell)
    {
        part.KnowsOnly("name", "hertz", "level", "t60");
        part.Needs("name", "hertz");
        var name = part.Text("name");
        var hertz = part.Number("hertz", 1, 20000, " Hz");
        var level = part.Number("level", -100, 20, " dB");
        var decay = part.Number("t60", 0.01, 1000, " s");
        if (name is not null && hertz is not null)
        {
            bell.Partials.Add(new PartialEntry(
                name,
                new TomlWord<Hertz>(new Hertz(hertz.Value), hertz.Where),
                level is null ? null : new Decibels(level.Value),
                decay is null ? null : new Seconds(decay.Value)));
        }
    }

    // Strike notes are MIDI numbers; a compass and a transposition can lead out of their range only together.
    private bool StrikesExist(List<WrittenNote> keys, TomlWord<int> sounds)
    {
        if (keys[0].Midi + sounds.Value >= 0 && keys[^1].Midi + sounds.Value <= 127)
        {
            return true;
        }

        problems.Add(new Problem(sounds.Where, $"{sounds.Value} semitones lead from this compass out of the range of notes", "strike notes from C-1 to G9"));
        return false;
    }
}

/// <summary>What a tower file says of one bell.</summary>
internal sealed record BellEntry(TomlWord<WrittenNote>? Key, Decibels Level, List<PartialEntry> Partials);

/// <summary>A measured partial; null where the law of the default bell is to fill in.</summary>
internal sealed record PartialEntry(TomlWord<string> Name, TomlWord<Hertz> Frequency, Decibels? Level, Seconds? Decay);
