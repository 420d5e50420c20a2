using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Sounds;

public sealed class SoundFileTests
{
    private static readonly string Balanced = ShippedSounds.Text("balanced");

    [Fact]
    public void Shipped_sounds_are_read_and_bear_their_names()
    {
        Assert.All(ShippedSounds.Names, name => Assert.Equal(name, ShippedSounds.Named(name).Name));
        Assert.Equal(ShippedSounds.Named("balanced"), ShippedSounds.Default);
    }

    [Fact]
    public void Every_number_of_a_file_reaches_its_own_place()
    {
        // Numbers that are all different, so that none can stand for another.
        var lines = Balanced.Split('\n').Select((line, i) => line.Split('=') switch
        {
            [var word, ..] when word.StartsWith("name", StringComparison.Ordinal) => line,
            [var word, _] when word.Trim() is "strong-beats" or "one-figure" => FormattableString.Invariant($"{word}= 0.{i}"),
            [var word, _] when word.Trim() is "roll-step" => FormattableString.Invariant($"{word}= 0.05{i}"),
            [var word, _] when word.Trim() is "tune" or "heavy" or "bells" => FormattableString.Invariant($"{word}= 1.{i}"),
            [var word, _] => FormattableString.Invariant($"{word}= {i}"),
            _ => line,
        });

        var sound = Accepted(string.Join('\n', lines));

        object?[] values =
        [
            sound.Clash, sound.Fade, sound.MissingRoot, sound.MissingThird, sound.MissingSeventh, sound.MissingFifth,
            sound.MissingColour, sound.LowThird, sound.Doubled, sound.FullChord, sound.Thin, sound.BareHands, sound.ThirdInBass, sound.OtherBass, sound.WeakBeatBass, sound.NoBass,
            sound.BassHeight, sound.DeepBass, sound.BassLeap, sound.BassStep, sound.BassAgain, sound.Approach, sound.ApproachesPerPhrase, sound.StrongBeatsWithBass, sound.RollForgone, sound.Rolled, sound.BassFirst,
            sound.Afterbeats, sound.Broken, sound.InTenths, sound.FigureChange, sound.RollsPerPhrase, sound.OneFigure, sound.RollStep, sound.TuneTouch,
            sound.HeavyTouch, sound.CarryTarget,
            sound.CarryShortfall, sound.CarryAtLeast, sound.BrightnessTarget, sound.BrightnessShortfall, sound.VoiceLeading, sound.Gap, sound.Tendency, sound.NumberOfTones,
            sound.TopLeap, sound.TopAgain, sound.Home, sound.NearTune, sound.Drowned, sound.Effort,
        ];
        Assert.Equal(values.Length, values.Distinct().Count());
        Assert.Equal(typeof(Sound).GetProperties().Count(p => p.Name != "Name" && p.CanWrite), values.Length);
        Assert.Equal(sound.MissingRoot + 1, sound.MissingThird);
        Assert.Equal(sound.Afterbeats + 1, sound.Broken);
    }

    [Fact]
    public void A_sound_without_fade_is_the_bare_physics()
    {
        Assert.Equal(new Seconds(1.16), Accepted(Balanced).Fade);
        Assert.Null(Accepted(Balanced.Replace("fade = 1.16", "fade = 0")).Fade);
    }

    [Fact]
    public void An_unknown_word_is_told_with_those_there_are() => Expect(
        "[effort]\nweight = 1 ",
        "[effort]\nweigth = 1 ",
        """
        own.toml:73:2: this [effort] has no line 'weight'; expected weight = ...
            [effort]
             ^^^^^^
        own.toml:74:1: 'weigth' is no word of this part; expected one of weight
            weigth = 1            # factor on the effort of hands and feet
            ^^^^^^

        """);

    [Fact]
    public void A_missing_word_is_asked_for() => Expect(
        "root = 75\n",
        "",
        """
        own.toml:9:2: this [tones] has no line 'root'; expected root = ...
            [tones]               # what leaving one out costs
             ^^^^^

        """);

    [Fact]
    public void A_file_without_the_bass_in_tenths_is_asked_for_its_price() => Expect(
        "in-tenths = 3         # the bass moving with the tune\n",
        "",
        """
        own.toml:35:2: this [figures] has no line 'in-tenths'; expected in-tenths = ...
            [figures]
             ^^^^^^^

        """);

    [Fact]
    public void A_missing_part_is_asked_for() => Expect(
        "[effort]\nweight = 1            # factor on the effort of hands and feet\n",
        "",
        """
        own.toml:3:8: the file has no part [effort]; expected [effort] and its lines
            name = "balanced"
                   ^^^^^^^^^^

        """);

    [Theory]
    [InlineData("-5", "-5")]
    [InlineData("1001", "1001")]
    [InlineData("nan", "not a finite number")]
    [InlineData("inf", "not a finite number")]
    [InlineData("-inf", "not a finite number")]
    [InlineData("1e999", "not a finite number")]
    [InlineData("\"much\"", "the text 'much'")]
    [InlineData("[1]", "a list")]
    public void A_price_lies_from_0_to_1000(string given, string found) => Expect(
        "fifth = 10",
        $"fifth = {given}",
        $"""
        own.toml:13:9: 'fifth' is {found}; expected a number from 0 to 1000
            fifth = {given}
                    {new string('^', given.Length)}

        """);

    [Fact]
    public void A_word_or_part_stands_once() => Expect(
        "[effort]\n",
        "[effort]\nweight = 2\n[carry]\n",
        """
        own.toml:75:2: 'carry' is no part of a sound, or stands twice; expected one each of [clash], [tones], [bass], [figures], [touch], [carry], [brightness], [lines], [tune], [effort]
            [carry]
             ^^^^^

        """);

    [Fact]
    public void A_word_stands_once() => Expect(
        "weight = 1            # factor on the effort",
        "weight = 2\nweight = 1 # factor on the effort",
        """
        own.toml:75:1: 'weight' is given twice; expected one line for it (the first is line 74)
            weight = 1 # factor on the effort of hands and feet
            ^^^^^^

        """);

    [Fact]
    public void Rolls_are_counted_whole_and_their_steps_bounded()
    {
        Expect(
            "rolls-in-phrase = 1   # at most, besides the last chord's",
            "rolls-in-phrase = 1.5",
            """
            own.toml:43:19: 'rolls-in-phrase' is no whole number; expected a whole number from 0 to 99
                rolls-in-phrase = 1.5
                                  ^^^

            """);
        Expect(
            "roll-step = 0.06      # seconds from stroke to stroke",
            "roll-step = 0.2",
            """
            own.toml:45:13: 'roll-step' is 0.2; expected a number from 0.04 to 0.09 s
                roll-step = 0.2
                            ^^^

            """);
    }

    [Fact]
    public void An_empty_file_is_told_all_that_it_lacks()
    {
        var refused = Assert.IsType<Reading<Sound>.Refused>(SoundFile.Read("own.toml", ""));
        Assert.Equal(1 + 10, refused.Problems.Count);
        Assert.Equal("own.toml: the file has no line 'name'; expected name = ...\n", refused.Problems[0].ToString());
    }

    [Theory]
    [InlineData("name = \"Quay\\")]
    [InlineData("name = \"\"\"\\")]
    [InlineData("\"\\")]
    [InlineData("name = \"\\U0001")]
    public void A_file_that_ends_inside_an_escape_is_refused_in_a_sentence(string text) => Assert.Equal(
        $"""
        own.toml:1:{text.Length}: the file ends inside an escape; expected the end of the text and its quotation mark
            {text}
            {new string(' ', text.Length - 1)}^

        """,
        string.Concat(Assert.IsType<Reading<Sound>.Refused>(SoundFile.Read("own.toml", text)).Problems.Select(p => p.ToString())));

    [Theory]
    [InlineData("\\UFFFFFFFF")]
    [InlineData("\\U00110000")]
    [InlineData("\\uD800")]
    [InlineData("\\x")]
    public void An_escape_that_is_no_character_is_pointed_at(string escape) => Assert.Contains(
        "cannot stand here; expected",
        string.Concat(Assert.IsType<Reading<Sound>.Refused>(SoundFile.Read("own.toml", $"name = \"a{escape}\"\n")).Problems.Select(p => p.ToString())));

    [Law(MaxTest = 300)]
    public Property Any_damage_to_a_file_is_read_or_refused_never_thrown()
    {
        var damage =
            from at in Gen.Choose(0, Balanced.Length - 1)
            from length in Gen.Choose(0, 6)
            from put in Gen.Elements("", "[", "]", "{", "\"", "\\", "\"\\", "'\\", "=", ".", "\n", "#", "nan", "1e400", "-", "\0", "\uD800", "[[", "[clash]\n", ",")
            select Balanced[..at] + put + Balanced[Math.Min(Balanced.Length, at + length)..];
        return Prop.ForAll(damage.ToArbitrary(), Ends);
    }

    [Law(MaxTest = 1000)]
    public bool Any_text_ends_in_an_outcome(string text) => Ends(text ?? "");

    private static bool Ends(string text) => SoundFile.Read("t.toml", text) switch
    {
        Reading<Sound>.Accepted accepted => accepted.Value.Name.Length > 0,
        Reading<Sound>.Refused refused => refused.Problems.Count > 0 && refused.Problems.All(p => p.ToString().EndsWith('\n')),
        _ => false,
    };

    private static Sound Accepted(string text) => Assert.IsType<Reading<Sound>.Accepted>(SoundFile.Read("own.toml", text)).Value;

    // Replaces a piece of the shipped file and pins the whole of what is said.
    private static void Expect(string piece, string by, string sentences)
    {
        Assert.Contains(piece, Balanced);
        var refused = Assert.IsType<Reading<Sound>.Refused>(SoundFile.Read("own.toml", Balanced.Replace(piece, by)));
        Assert.Equal(sentences, string.Concat(refused.Problems.Select(p => p.ToString())));
    }
}
