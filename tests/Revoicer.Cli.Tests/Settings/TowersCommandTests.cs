using Revoicer.Bells;
using Xunit;

namespace Revoicer.Cli.Tests.Settings;

public sealed class TowersCommandTests : IDisposable
{
    private const string Quay = """
        name = "Merrowhaven Quay"
        lowest = "C3"
        highest = "C5"
        missing = ["C#3", "D#3"]
        pedals = ["C3", "G3"]
        sounds = 12

        """;

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task All_that_ship_are_listed_with_compass_pedals_and_pitch()
    {
        var ran = await Ran.Of("towers");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.All(ShippedTowers.Names, name => Assert.Contains(name + "\n  Merrowhaven ", ran.Output, StringComparison.Ordinal));
        Assert.StartsWith(
            """
            chapel-23
              Merrowhaven Chapel: 23 bells from C4 to C6, without C#4 and D#4. Pedals from C4 to G5, 18 of them
              with a bell. What you read is heard two octaves higher. Two octaves without the two lowest sharps
              (published count). Where such an instrument begins on the keyboard differs between sources; this
              is one practice.


            """,
            ran.Output,
            StringComparison.Ordinal);
        Assert.Contains("A draft is made for harbour-47 unless another is named:\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains("\n  revoicer towers harbour-47 --print > own.toml\n", ran.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("towers")]
    [InlineData("towers", "--help")]
    public async Task The_cautions_are_shown_in_full(params string[] args)
    {
        var output = Joined((await Ran.Of(args)).Output);
        Assert.Contains("defaults, not medical advice. Stop if a reach or a repeated heavy stroke hurts, and have a teacher tune them.", output, StringComparison.Ordinal);
        Assert.Contains("NIOSH recommends at most 85 dBA over 8 h, halving the time for every 3 dB more.", output, StringComparison.Ordinal);
        Assert.Contains("Clock hammers and swinging bells start without warning. Isolate them before anyone goes near.", output, StringComparison.Ordinal);
        Assert.Contains("Rehearse on the practice keyboard first.", output, StringComparison.Ordinal);
        Assert.Contains("Tower access and playing hours follow local rules and those who are licensed to say.", output, StringComparison.Ordinal);
        Assert.Contains("leave the bell chamber before anyone strikes. Protect your ears.", output, StringComparison.Ordinal);
        Assert.Contains("It is never a ground for retuning or altering a bell or its fittings.", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_cautions_fit_a_page() =>
        Assert.All((await Ran.Of("towers")).Output.Split("Before you play")[1].Split('\n'), line => Assert.InRange(line.Length, 0, 100));

    [Fact]
    public async Task One_that_ships_is_shown_in_sentences() => Assert.Equal(
        new Ran(0, """
            This tower is lighthouse-49, which ships.

            Merrowhaven Lighthouse
            ======================

            Bells        49 bells from A#2 to C7, without B2 and C#3.
            Pedals       from A#2 to C5, 25 of them with a bell.
            Pitch        what you read is heard an octave higher; the bell on A#2 strikes A#3, 233.1 Hz.
            Measured     no bell, so all are taken to sound as the default bell.
            Limits       of reach and time as shipped.

            """, ""),
        await Ran.Of("towers", "lighthouse-49"));

    [Fact]
    public async Task A_file_is_told_with_what_it_sets_and_warns_of()
    {
        var file = _scratch.Put("quay.toml", Quay + """
            [limits]
            hand_span = { hard = 7, soft = 4 }
            hands_apart = { soft = 20 }
            hand_pair_again_s = { hard = 0.5 }
            at_once_s = {}

            [[bell]]
            key = "E3"

            [[bell.partial]]
            name = "hum"
            hertz = 395

            """);
        Assert.Equal(
            new Ran(0, $"""
                This tower is the file {file}.

                Merrowhaven Quay
                ================

                Bells        23 bells from C3 to C5, without C#3 and D#3.
                Pedals       from C3 to G3, 6 of them with a bell.
                Pitch        what you read is heard an octave higher; the bell on C3 strikes C4, 261.6 Hz.
                Measured     one bell, E3; the others are taken to sound as the default bell.
                Limits       of reach and time as shipped, but for these:
                  - hand_pair_again_s: hard 0.5 s, where none ships and none is asked for
                  - hand_span: hard 7 in place of 5 semitones; soft 4 semitones, as shipped
                  - hands_apart: soft 20 in place of 24 semitones
                  - at_once_s: nothing is set, so it stays as shipped

                """,
                $"warning: {file}:18:9: the hum of E3 lies 15.1 semitones above that of a default bell; expected about 165 Hz; check its name, and 'sounds' and 'pitch' of the tower\n"
                + "    hertz = 395\n            ^^^\n"),
            await Ran.Of("towers", file));
    }

    [Fact]
    public async Task All_problems_of_a_file_are_told_with_their_places()
    {
        var file = _scratch.Put("quay.toml", Quay.Replace("\"C3\", \"G3\"", "\"C3\", \"H3\"", StringComparison.Ordinal) + "colour = \"green\"\n");
        var ran = await Ran.Of("towers", file);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains($"{file}:5:17: 'H3' is no key; expected a note with its octave", ran.Error, StringComparison.Ordinal);
        Assert.Contains($"{file}:7:1: 'colour' is no word of this part; expected one of name, ", ran.Error, StringComparison.Ordinal);
        Assert.Contains("\n    colour = \"green\"\n    ^^^^^^\n", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_pattern_is_the_shipped_file_and_can_be_read(string name)
    {
        var printed = await Ran.Of("towers", name, "--print");
        Assert.Equal(new Ran(0, ShippedTowers.Text(name), ""), printed);
        var own = await Ran.Of("towers", _scratch.Put("own.toml", printed.Output));
        var shipped = await Ran.Of("towers", name);
        Assert.Equal((0, ""), (own.ExitCode, own.Error));
        Assert.Equal(shipped.Output.Split('\n')[1..], own.Output.Split('\n')[1..]);
    }

    public static TheoryData<string> Names => [.. ShippedTowers.Names];

    [Fact]
    public async Task What_cannot_be_found_or_printed_is_said_in_a_sentence()
    {
        const string names = "expected one of chapel-23, custom-house-37, harbour-47, lighthouse-49, great-56";
        Assert.Equal(
            new Ran(2, "", $"river-12: no tower of that name ships, and there is no such file; {names}, or a file\n"),
            await Ran.Of("towers", "river-12"));
        Assert.Equal(new Ran(2, "", $"--print needs the name of a tower; {names}\n"), await Ran.Of("towers", "--print"));
        Assert.Equal(
            new Ran(2, "", $"quay.toml: --print shows a tower that ships, and none of that name does; {names}\n"),
            await Ran.Of("towers", "quay.toml", "--print"));
    }

    [Fact]
    public async Task A_folder_other_bytes_and_a_huge_file_are_refused()
    {
        Directory.CreateDirectory(_scratch.At("folder"));
        Assert.Contains("it is a folder, or you may not read it", (await Refused("folder")).Error, StringComparison.Ordinal);
        File.WriteAllBytes(_scratch.At("latin.toml"), [0x23, 0xe9, 0x0a]);
        Assert.Contains("is not UTF-8 text", (await Refused("latin.toml")).Error, StringComparison.Ordinal);
        _scratch.Put("huge.toml", new string('#', 1_048_577));
        Assert.Contains("the file has more than 1048576 bytes; expected a tower file of at most so many", (await Refused("huge.toml")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_device_without_an_end_is_refused_like_a_huge_file()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "/dev/zero is a device of Linux");
        var ran = await Ran.Of("towers", "/dev/zero");
        Assert.Equal(new Ran(2, "", "/dev/zero: the file has more than 1048576 bytes; expected a tower file of at most so many\n"), ran);
    }

    [Fact]
    public async Task A_mark_of_the_byte_order_does_not_matter() =>
        Assert.Equal(0, (await Ran.Of("towers", _scratch.Put("quay.toml", "\uFEFF" + Quay))).ExitCode);

    [Fact]
    public async Task Help_shows_an_example() =>
        Assert.Contains("Example: revoicer towers quay.toml", (await Ran.Of("towers", "--help")).Output, StringComparison.Ordinal);

    private async Task<Ran> Refused(string name)
    {
        var ran = await Ran.Of("towers", _scratch.At(name));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        return ran;
    }

    private static string Joined(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
