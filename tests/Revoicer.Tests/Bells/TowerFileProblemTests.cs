using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Bells;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Bells;

public sealed class TowerFileProblemTests
{
    private const string Good = """
        name = "Merrowhaven Quay"
        lowest = "C3"
        highest = "C5"
        pedals = ["C3", "G3"]
        sounds = 12
        """;

    [Fact]
    public void All_problems_are_told_at_once_in_the_order_of_the_file()
    {
        Expect(
            """
            name = "Quay"
            lowest = "H3"
            highest = "C5"
            pedals = ["G3"]
            sounds = 12.5
            pitch = nan
            colour = "green"
            pitch = 441
            """,
            """
            quay.toml:2:10: 'H3' is no key; expected a note with its octave, "C4" (middle C) or "F#3"
                lowest = "H3"
                         ^^^^
            quay.toml:4:10: 'pedals' does not name a row of pedals; expected two keys, the lowest and the highest: ["C3", "G4"]
                pedals = ["G3"]
                         ^^^^^^
            quay.toml:5:10: 'sounds' is 12.5; expected a whole number from -24 to 36 semitones
                sounds = 12.5
                         ^^^^
            quay.toml:6:9: 'pitch' is not a finite number; expected a number from 300 to 600 Hz
                pitch = nan
                        ^^^
            quay.toml:7:1: 'colour' is no word of this part; expected one of name, lowest, highest, missing, pedals, sounds, pitch, cents, home, home-below
                colour = "green"
                ^^^^^^
            quay.toml:8:1: 'pitch' is given twice; expected one line for it (the first is line 6)
                pitch = 441
                ^^^^^

            """);
    }

    [Fact]
    public void A_number_with_a_point_is_told_with_it() => Expect(
        "name = 'Quay'\nlowest = 'C3'\nhighest = 'C5'\npedals = ['C3', 'G3']\nsounds = 12.0\n",
        """
        quay.toml:5:10: 'sounds' is 12.0; expected a whole number from -24 to 36 semitones
            sounds = 12.0
                     ^^^^

        """);

    [Fact]
    public void What_is_missing_is_asked_for() => Expect(
        "name = 'Quay'\nlowest = 'C3'\nhighest = 'C5'\n",
        """
        quay.toml: the file has no line 'pedals'; expected pedals = ...
        quay.toml: the file has no line 'sounds'; expected sounds = ...

        """);

    [Fact]
    public void Bells_are_checked_against_the_compass() => Expect(
        Good + """

            missing = ["C#3", "C#3", "C5"]

            [[bell]]
            key = "C#3"

            [[bell]]
            key = "D3"

            [[bell.partial]]
            name = "partial 7"
            hertz = 1000

            [[bell]]
            key = "D3"
            """,
        """
        quay.toml:6:19: C#3 is named twice; expected every missing key once
            missing = ["C#3", "C#3", "C5"]
                              ^^^^^
        quay.toml:6:26: C5 does not lie inside the compass; expected a key between C3 and C5
            missing = ["C#3", "C#3", "C5"]
                                     ^^^^
        quay.toml:9:7: the tower has no bell on C#3; expected a key of the compass that is not missing
            key = "C#3"
                  ^^^^^
        quay.toml:15:8: 'partial 7' on D3 is no partial the default bell has, and its level or t60 is missing; expected both, or one of hum, prime, tierce, quint, nominal, deciem, undeciem, duodeciem, double octave
            name = "partial 7"
                   ^^^^^^^^^^^
        quay.toml:19:7: the bell on D3 is given twice; expected one [[bell]] for a key
            key = "D3"
                  ^^^^

        """);

    [Fact]
    public void Parts_are_known_by_their_brackets() => Expect(
        Good + """

            [[bell.partial]]
            [bell]
            [[limits]]
            [limits]
            hand_span = 5
            hand_width = { hard = 5 }
            [limits]
            [bels]
            """,
        """
        quay.toml:6:3: a partial stands before any bell; expected [[bell]] with its key above
            [[bell.partial]]
              ^^^^^^^^^^^^
        quay.toml:7:2: 'bell' stands in single brackets; expected [[bell]]
            [bell]
             ^^^^
        quay.toml:8:3: 'limits' stands in double brackets; expected [limits]
            [[limits]]
              ^^^^^^
        quay.toml:10:13: 'hand_span' is 5; expected words in braces, { word = value }
            hand_span = 5
                        ^
        """, wholeText: false);

    [Theory]
    [InlineData("hand_span = { hard = 128 }", "'hard' is 128; expected a number from 0 to 127 semitones")]
    [InlineData("hands_apart = { soft = -1 }", "'soft' is -1; expected a number from 0 to 127 semitones")]
    [InlineData("hand_lowest_n = { soft = 128 }", "'soft' is 128; expected a number from 0 to 127 (a written MIDI note)")]
    [InlineData("recovery_from_84_s = { hard = 11 }", "'hard' is 11; expected a number from 0 to 10 s")]
    [InlineData("hand_move_per_doubling_s = { hard = 2.5 }", "'hard' is 2.5; expected a number from 0 to 2 s")]
    [InlineData("at_once_s = { hard = 1.5 }", "'hard' is 1.5; expected a number from 0 to 1 s")]
    [InlineData("bells_at_once = { hard = 13 }", "'hard' is 13; expected a number from 0 to 12 bells")]
    [InlineData("heavy_strokes_in_10_s = { hard = nan }", "'hard' is not a finite number; expected a number from 0 to 100 strokes")]
    public void Every_limit_has_a_range_of_its_own(string line, string sentence) =>
        Expect(Good + "\n[limits]\n" + line + "\n", $"quay.toml:7:{line.LastIndexOf('=') + 3}: {sentence}\n", wholeText: false);

    [Fact]
    public void What_no_tower_has_is_refused_before_it_costs_time()
    {
        // A semitone less is read in both cases.
        Assert.IsType<Reading<Tower>.Accepted>(TowerFile.Read("quay.toml", Wide("C1", "G7", "C4")));
        Expect(
            Wide("C1", "G#7", "C4"),
            """
            quay.toml:3:11: from C1 to G#7 there are 81 bells; expected at most 80
                highest = "G#7"
                          ^^^^^

            """);
        Expect(
            Wide("C1", "G7", "C#4"),
            """
            quay.toml:4:10: from C1 to C#4 there are more pedals than two feet can serve; expected at most 37 keys, three octaves
                pedals = ["C1", "C#4"]
                         ^^^^^^^^^^^^^

            """);

        static string Wide(string lowest, string highest, string pedalsTo) =>
            $"name = \"Quay\"\nlowest = \"{lowest}\"\nhighest = \"{highest}\"\npedals = [\"{lowest}\", \"{pedalsTo}\"]\nsounds = 12\n";
    }

    [Fact]
    public void What_is_no_TOML_is_pointed_at_once_a_line() => Expect(
        "name = \nlowest = C3\n",
        """
        quay.toml:1:8: the line ends too early; expected a line like word = value with text in quotes, or a heading in brackets
            name = 
                   ^
        quay.toml:2:10: 'C' cannot stand here; expected a line like word = value with text in quotes, or a heading in brackets
            lowest = C3
                     ^

        """);

    [Fact]
    public void Hostile_files_are_refused_in_a_sentence()
    {
        Expect("a = " + new string('[', 1900), "quay.toml: brackets stand too deep inside each other; expected at most three deep\n");
        Expect("#" + new string('x', 2000), "quay.toml: a line has 2001 characters; expected at most 2000 a line\n");
        Expect(new string('\n', 300_000), "quay.toml: the file has 300000 characters; expected at most 262144\n");
        Expect(Good + "\ncents = 1e999\n", "quay.toml:6:9: 'cents' is not a finite number; expected a number from -100 to 100 cents\n", wholeText: false);
        Expect(Good.Replace("sounds = 12", "sounds = 99999999999999999999"), "quay.toml:5:10: ", wholeText: false);
        Expect(
            Good.Replace("C5", "G9").Replace("sounds = 12", "sounds = 36"),
            "quay.toml:5:10: 36 semitones lead from this compass out of the range of notes; expected strike notes from C-1 to G9\n",
            wholeText: false);
    }

    [Law(MaxTest = 300)]
    public Property Any_damage_to_a_file_is_read_or_refused_never_thrown()
    {
        var whole = ShippedTowers.Text("harbour-47")
            + "[limits]\nhand_span = { hard = 5 }\n[[bell]]\nkey = 'E3'\n[[bell.partial]]\nname = 'hum'\nhertz = 165.0\n";
        var damage =
            from at in Gen.Choose(0, whole.Length - 1)
            from length in Gen.Choose(0, 6)
            from put in Gen.Elements("", "[", "]", "{", "}", "\"", "'", "=", ".", "\n", "#", "nan", "1e400", "-", "\0", "\uD800", "[[", "\"\"\"", ",")
            select whole[..at] + put + whole[Math.Min(whole.Length, at + length)..];
        return Prop.ForAll(damage.ToArbitrary(), text => TowerFile.Read("t.toml", text) switch
        {
            Reading<Tower>.Accepted accepted => accepted.Value.Bells.Count > 0,
            Reading<Tower>.Refused refused => refused.Problems.Count > 0 && refused.Problems.All(p => p.ToString().EndsWith('\n')),
            _ => false,
        });
    }

    private static void Expect(string text, string sentences, bool wholeText = true)
    {
        var refused = Assert.IsType<Reading<Tower>.Refused>(TowerFile.Read("quay.toml", text));
        var told = string.Concat(refused.Problems.Select(p => p.ToString()));
        if (wholeText)
        {
            Assert.Equal(sentences, told);
        }
        else
        {
            Assert.StartsWith(sentences, told);
        }
    }
}
