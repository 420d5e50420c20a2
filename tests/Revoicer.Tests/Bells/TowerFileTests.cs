using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Bells;

public sealed class TowerFileTests
{
    private const string Head = """
        name = "Merrowhaven Quay"
        lowest = "C3"
        highest = "C5"
        missing = ["C#3", "D#3"]
        pedals = ["C3", "G3"]
        sounds = 12

        """;

    [Fact]
    public void A_compass_with_missing_bells_gives_the_rest()
    {
        var tower = Accepted(Head);

        Assert.Equal(23, tower.Bells.Count);
        Assert.Equal(["C#3", "D#3"], tower.Missing.Select(n => n.ToString()));
        Assert.Equal(("C3", "G3"), (tower.PedalsFrom.ToString(), tower.PedalsTo.ToString()));
        Assert.DoesNotContain(tower.Bells, b => b.IsMeasured);
    }

    [Fact]
    public void Written_notes_sound_the_stated_semitones_higher()
    {
        // ISO 16: A4 = 440 Hz; the key A3 of a concert-pitch instrument strikes A4.
        Assert.Equal(("A4", 440.0), Strike(Accepted(Head), "A3"));
        Assert.Equal(("A5", 880.0), Strike(Accepted(Head.Replace("sounds = 12", "sounds = 24")), "A3"));
        Assert.Equal(("G4", 440 * Math.Pow(2, -2 / 12.0)), Strike(Accepted(Head.Replace("sounds = 12", "sounds = 10")), "A3"));
    }

    [Fact]
    public void A_tower_in_another_pitch_keeps_its_names_and_moves_its_frequencies()
    {
        Assert.Equal(("A4", 415.0), Strike(Accepted(Head + "pitch = 415\n"), "A3"));
        Assert.Equal(440 * Math.Pow(2, 50 / 1200.0), Strike(Accepted(Head + "cents = 50\n"), "A3").Hertz, 1e-9);
        Assert.Equal(415 * Math.Pow(2, -0.5 / 12), Strike(Accepted(Head + "pitch = 415\ncents = -50.0\n"), "A3").Hertz, 1e-9);
    }

    [Fact]
    public void A_level_scales_one_bell_and_leaves_it_unmeasured()
    {
        var bell = Bell(Accepted(Head + "[[bell]]\nkey = \"E3\"\nlevel = -6.0\n"), "E3");

        Assert.Equal(Math.Pow(10, -0.6), bell.Partials.Sum(p => p.Amplitude * p.Amplitude), 1e-12);
        Assert.False(bell.IsMeasured);
    }

    [Fact]
    public void A_measured_partial_takes_from_the_default_bell_what_is_not_measured()
    {
        var plain = Bell(Accepted(Head), "E3");
        var bell = Bell(Accepted(Head + "[[bell]]\nkey = \"E3\"\n[[bell.partial]]\nname = \"tierce\"\nhertz = 398.0\n"), "E3");

        Assert.True(bell.IsMeasured);
        Assert.Equal(398, Partial(bell, "tierce").Frequency.Value);
        Assert.Equal(Partial(plain, "tierce").Decay, Partial(bell, "tierce").Decay);
        Assert.Equal(Partial(plain, "tierce").Amplitude, Partial(bell, "tierce").Amplitude, 1e-12);
        Assert.Equal(Partial(plain, "quint"), Partial(bell, "quint"));
    }

    [Fact]
    public void What_is_measured_is_taken_and_partials_stand_in_order_of_frequency()
    {
        var bell = Bell(
            Accepted(Head + """
                [[bell]]
                key = "E3"

                [[bell.partial]]
                name = "partial 7"
                hertz = 1000
                level = -12.5
                t60 = 3.5

                [[bell.partial]]
                name = "nominal"
                hertz = 660
                t60 = 7.0
                """),
            "E3");

        Assert.Equal(330, bell.Strike.Value);
        Assert.Equal(new Seconds(3.5), Partial(bell, "partial 7").Decay);
        Assert.Equal(new Seconds(7), Partial(bell, "nominal").Decay);
        // The tierce is the strongest (0 dB) up to C7 in the default bell.
        Assert.Equal(-12.5, 20 * Math.Log10(Partial(bell, "partial 7").Amplitude / Partial(bell, "tierce").Amplitude), 1e-9);
        Assert.Equal(1, bell.Partials.Sum(p => p.Amplitude * p.Amplitude), 1e-12);
        Assert.Equal(bell.Partials.OrderBy(p => p.Frequency.Value), bell.Partials);
    }

    [Fact]
    public void Limits_are_handed_on_by_their_keys()
    {
        var tower = Accepted(Head + "[limits]\nhand_span = { hard = 7, soft = 5.5 }\nhands_apart = { soft = 20 }\n");

        Assert.Equal([new LimitOverride("hand_span", 7, 5.5), new LimitOverride("hands_apart", null, 20)], tower.Limits);
    }

    [Fact]
    public void A_partial_under_a_wrong_name_is_warned_of()
    {
        var reading = TowerFile.Read("quay.toml", Head + "[[bell]]\nkey = \"E3\"\n[[bell.partial]]\nname = \"hum\"\nhertz = 395\n");

        var warning = Assert.Single(Assert.IsType<Reading<Tower>.Accepted>(reading).Warnings);
        Assert.Equal(
            "quay.toml:11:9: the hum of E3 lies 15.1 semitones above that of a default bell; expected about 165 Hz; check its name, and 'sounds' and 'pitch' of the tower\n"
            + "    hertz = 395\n            ^^^\n",
            warning.ToString());
    }

    [Fact]
    public void Every_limit_of_the_table_can_be_set()
    {
        var keys = SharedFiles.LinesOrSkip("reference", "playing-limits.tsv")
            .Where(l => l.Length > 0 && l[0] != '#').Skip(1).Select(l => l.Split('\t')[0]);

        Assert.Equal(keys, LimitKeys.All);
    }

    [Fact]
    public void The_example_in_the_documentation_is_read_as_it_stands()
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Revoicer.sln")))
        {
            root = Path.GetDirectoryName(root) ?? throw new InvalidOperationException("the repository's root holds Revoicer.sln");
        }

        var example = File.ReadAllText(Path.Combine(root, "docs", "files.md")).Split("```toml\n")
            .Select(part => part.Split("```")[0]).Single(part => part.Contains("sounds = "));
        var tower = Accepted(example);

        Assert.Equal(47, tower.Bells.Count);
        Assert.Equal(new Seconds(24), Partial(Bell(tower, "G3"), "tierce").Decay);
        Assert.Equal(393.25, Bell(tower, "G3").Strike.Value);
    }

    private static Tower Accepted(string text)
    {
        var reading = TowerFile.Read("quay.toml", text);
        Assert.True(reading is Reading<Tower>.Accepted, string.Concat((reading as Reading<Tower>.Refused)?.Problems.Select(p => p.ToString()) ?? []));
        var accepted = (Reading<Tower>.Accepted)reading;
        Assert.Empty(accepted.Warnings);
        return accepted.Value;
    }

    private static Bell Bell(Tower tower, string key) => tower.Bells.Single(b => b.Note.ToString() == key);

    private static Partial Partial(Bell bell, string name) => bell.Partials.Single(p => p.Name == name);

    private static (string Note, double Hertz) Strike(Tower tower, string key) =>
        (Bell(tower, key).StrikeNote.ToString(), Bell(tower, key).Strike.Value);
}
