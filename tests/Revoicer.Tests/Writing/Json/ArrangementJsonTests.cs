using System.Text;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Tests.Writing.Midi;
using Revoicer.Text;
using Revoicer.Writing.Json;
using Revoicer.Writing.Midi;
using Revoicer.Writing.MusicXml;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Writing.Json;

public class ArrangementJsonTests
{
    private const string Name = "lights.json";

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void What_is_written_is_read_back_equal(Arrangement arrangement)
    {
        var accepted = Assert.IsType<Reading<Arrangement>.Accepted>(ArrangementJson.Read(Name, ArrangementJson.Write(arrangement)));
        Assert.Equal(arrangement, accepted.Value);
    }

    [Law(Arbitrary = [typeof(ArrangementGens)], MaxTest = 20)]
    public void The_same_arrangement_gives_the_same_bytes(Arrangement arrangement) =>
        Assert.Equal(ArrangementJson.Write(arrangement), ArrangementJson.Write(arrangement with { }));

    [Fact]
    public void Harbour_Lights_is_written_as_kept() =>
        Expected.Text("harbour-lights-json", Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.HarbourLights)));

    [Fact]
    public void Lines_end_with_a_line_feed_and_the_file_begins_without_byte_order_mark()
    {
        var bytes = ArrangementJson.Write(SampleArrangements.HarbourLights);
        Assert.Equal((byte)'{', bytes[0]);
        Assert.Equal((byte)'\n', bytes[^1]);
        Assert.DoesNotContain((byte)'\r', bytes);
    }

    [Fact]
    public void Every_truncation_is_refused_with_its_place()
    {
        var bytes = ArrangementJson.Write(SampleArrangements.OneStroke);

        // The last byte is the line end, which JSON does not need.
        for (var length = 0; length < bytes.Length - 1; length++)
        {
            var refused = Assert.IsType<Reading<Arrangement>.Refused>(ArrangementJson.Read(Name, bytes.AsSpan(0, length)));
            Assert.All(refused.Problems, p => Assert.InRange(p.Where.Line, 1, 80));
        }
    }

    [Law(MaxTest = 300)]
    public void A_mutated_file_is_read_or_refused_with_a_place(uint where, byte what, bool insert)
    {
        var bytes = ArrangementJson.Write(SampleArrangements.HarbourLights).ToList();
        var at = (int)(where % bytes.Count);
        if (insert)
        {
            bytes.Insert(at, what);
        }
        else
        {
            bytes[at] = what;
        }

        if (ArrangementJson.Read(Name, bytes.ToArray()) is Reading<Arrangement>.Refused refused)
        {
            Assert.NotEmpty(refused.Problems);
            Assert.All(refused.Problems, p => Assert.True(p.Where is { Line: > 0, Column: > 0 }, p.ToString()));
        }
    }

    [Law(MaxTest = 500)]
    public void What_is_read_with_any_number_changed_can_still_be_written(uint which, int number)
    {
        string[] values = [$"{number}", "0", "1", "7", "-1", "99999", "100000", "9973", "0.5", "60", "127"];
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.HarbourLights));
        var numbers = Regex.Matches(text, "[0-9.]+");
        var changed = numbers[(int)(which % numbers.Count)];
        text = text[..changed.Index] + values[Math.Abs((long)number) % values.Length] + text[(changed.Index + changed.Length)..];
        if (ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(text)) is Reading<Arrangement>.Accepted accepted)
        {
            Assert.NotEmpty(MidiWalk.Through(MidiWriting.Bytes(accepted.Value)).Tracks);
            Assert.NotEmpty(RationaleText.Of(accepted.Value));
            Assert.NotEmpty(ArrangementJson.Write(accepted.Value));
            Assert.NotEmpty(MusicXmlWriting.Bytes(accepted.Value));
        }
    }

    // Every single number or place of the parts that say when what is struck: changed, it is at odds with another, and the file
    // is refused at a place; or what is read is what was written, or differs in nothing that is struck, when or where.
    [Fact]
    public void A_changed_time_beat_lead_or_length_is_refused_or_changes_nothing_that_is_heard()
    {
        var written = SampleArrangements.HarbourLights;
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(written));
        var refused = 0;
        foreach (Match member in Regex.Matches(text, "\"(start|length|beat|lead|at|shift|from|bar|pass|figure)\": ?(\"[0-9/]+\"|[0-9.]+|\"(rolled|together)\")"))
        {
            var value = member.Groups[2];
            foreach (var other in Others(value.Value).Where(o => o != value.Value))
            {
                var changed = text[..value.Index] + other + text[(value.Index + value.Length)..];
                switch (ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(changed)))
                {
                    case Reading<Arrangement>.Refused no:
                        refused++;
                        Assert.All(no.Problems, p => Assert.True(p.Where.Line > 0, p.ToString()));
                        break;
                    case Reading<Arrangement>.Accepted { Value: var read }:
                        Assert.Equal(written.Strokes, read.Strokes);
                        Assert.Equal(written.Choices.Select(c => (c.Bar, c.Pass, c.Beat, c.Figure)), read.Choices.Select(c => (c.Bar, c.Pass, c.Beat, c.Figure)));
                        Assert.Equal(written.Shift, read.Shift);
                        break;
                }
            }
        }

        Assert.True(refused > 200, $"{refused} refused");

        static string[] Others(string value) => value switch
        {
            "\"rolled\"" => ["\"together\""],
            "\"together\"" => ["\"rolled\""],
            ['"', ..] => ["\"1\"", "\"5\"", "\"7/2\"", "\"40\""],
            _ => ["1", "5", "0.37", "40"],
        };
    }

    [Theory]
    [InlineData("\"tune\":true", "\"tune\":false", "a stroke of G5 at 0 that is neither the tune's nor a chord's; expected a place in the time of a chord, and the stroke among that chord's", "\"beat\":\"0\"")]
    [InlineData("\"strokes\": [6,7]", "\"strokes\": [6]", "a stroke of C5 at 5 that is neither the tune's nor a chord's; expected it among the strokes of the chord from 5 to 7", "\"midi\":72,\"name\":\"C5\",\"limb\":\"left hand\",\"beat\":\"5\"")]
    [InlineData("\"price\": 118640", "\"price\": 118641", "a price of 118641; expected 118640, the price that stands in 'status'", "\"price\": 118641,")]
    public void A_stroke_of_no_chord_and_a_second_price_are_refused_at_their_place(string right, string wrong, string sentence, string where)
    {
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.HarbourLights));
        var at = text.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, text);
        text = text[..at] + wrong + text[(at + right.Length)..];
        var read = ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(text));
        var problem = Assert.Single(Assert.IsType<Reading<Arrangement>.Refused>(read).Problems);
        Assert.Equal(sentence, $"{problem.Found}; expected {problem.Expected}");
        Assert.Contains(where, text.Split('\n')[problem.Where.Line - 1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"format\": 8", "\"format\": 7", "7 stands here; expected 8")]
    [InlineData("\"layout\": null", "\"layout\": { \"tune\": \"aside\", \"price\": 1, \"other\": null, \"obstacle\": null }", "'aside' stands here; expected above or below")]
    [InlineData("\"layout\": null", "\"layout\": { \"tune\": \"below\", \"price\": 1, \"obstacle\": null }", "'other' is missing from this object; expected a member \"other\"")]
    [InlineData("\"title\": ", "\"titel\": ", "'titel' is no member of this object; expected the members of docs/files.md")]
    [InlineData("\"title\": \"One stroke\",", "", "'title' is missing from this object; expected a member \"title\"")]
    [InlineData("\"sound\": ", "\"title\": \"\", \"sound\": ", "'title' is given twice; expected each member once")]
    [InlineData("\"midi\":60,\"name\":\"C4\"", "\"midi\":60,\"name\":\"D4\"", "'D4' is not the name of note 60; expected \"C4\", or another number")]
    [InlineData("\"limb\":\"right hand\"", "\"limb\":\"elbow\"", "'elbow' stands here; expected left foot, right foot, left hand or right hand")]
    [InlineData("\"length\":\"4\"", "\"length\":\"0\"", "a bar of 0 quarter notes; expected a bar that lasts")]
    [InlineData("\"beat\":\"0\"", "\"beat\":\"1/0\"", "'1/0' stands here; expected 0 to 100000 quarter notes as a text, \"3\" or \"3/2\", parted in at most 10000")]
    [InlineData("\"meter\":\"4/4\"", "\"meter\":\"4/5\"", "'4/5' stands here; expected a time signature, \"6/8\"")]
    [InlineData("\"perMinute\":60", "\"perMinute\":0", "no tempo that can be played; expected a number that makes 4 to 6000 quarter notes a minute")]
    [InlineData("\"writtenKey\": null", "\"writtenKey\": \"H\"", "'H' stands here; expected a key of at most seven accidentals, \"Bb minor\", or null")]
    [InlineData("\"tempoIsAssumed\": true", "\"tempoIsAssumed\": 1", "1 stands here; expected true or false")]
    [InlineData("\"transposition\": 12", "\"transposition\": 99", "C4 sounds 99 semitones from itself; expected a bell within MIDI notes 0 to 127")]
    [InlineData("\"shift\": 0", "\"shift\": 1e999", "Infinity stands here; expected a number from 0 to 86400")]
    [InlineData("One stroke", "\\uD800", "an escape for half a character; expected both halves, \\uD800-\\uDBFF and \\uDC00-\\uDFFF")]
    public void A_wrong_member_is_told_in_a_sentence(string right, string wrong, string sentence)
    {
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.OneStroke));
        Assert.Contains(right, text);
        var read = ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(text.Replace(right, wrong)));
        var refused = Assert.IsType<Reading<Arrangement>.Refused>(read);
        Assert.Contains(refused.Problems, p => $"{p.Found}; expected {p.Expected}" == sentence);
    }

    [Fact]
    public void All_problems_come_at_once_with_carets_under_them()
    {
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.OneStroke))
            .Replace("\"midi\":60", "\"midi\":600").Replace("\"level\":0", "\"level\":\"loud\"");
        var refused = Assert.IsType<Reading<Arrangement>.Refused>(ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(text)));
        Assert.Contains("600 stands here; expected a whole number from 0 to 127\n", refused.Problems[0].ToString());
        Assert.EndsWith(" ^^^\n", refused.Problems[0].ToString());
        Assert.Contains(refused.Problems, p => p.Found == "a text stands here" && p.Expected == "a number from -200 to 200");
    }

    [Fact]
    public void A_wrong_name_is_shown_with_its_quotes_and_no_more()
    {
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.OneStroke)).Replace("\"sound\": ", "\"sounds\" : ");
        var refused = Assert.IsType<Reading<Arrangement>.Refused>(ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(text)));
        var place = Assert.Single(refused.Problems, p => p.Found == "'sounds' is no member of this object").Where;
        Assert.Equal("\"sounds\"", place.LineText.Substring(place.Column - 1, place.Length));
    }

    [Fact]
    public void Half_a_character_in_a_name_and_in_a_text_hides_no_other_problem()
    {
        var text = Encoding.UTF8.GetString(ArrangementJson.Write(SampleArrangements.OneStroke))
            .Replace("\"title\"", "\"\\uD800\"").Replace("One stroke", "\\uDC00").Replace("\"level\":0", "\"level\":\"loud\"");
        var refused = Assert.IsType<Reading<Arrangement>.Refused>(ArrangementJson.Read(Name, Encoding.UTF8.GetBytes(text)));
        Assert.Equal(2, refused.Problems.Count(p => p.Found == "an escape for half a character"));
        Assert.Contains(refused.Problems, p => p.Found == "a text stands here" && p.Expected == "a number from -200 to 200");
    }

    [Fact]
    public void A_deep_or_huge_or_foreign_file_is_refused()
    {
        byte[][] files =
        [
            [.. Enumerable.Repeat((byte)'[', 100_000)],
            [.. Enumerable.Repeat((byte)' ', 33 * 1024 * 1024)],
            Encoding.UTF8.GetBytes("[" + string.Concat(Enumerable.Repeat("1,", 1_000_001)) + "1]"),
            [0xFF, 0xFE, 0x00],
            Encoding.UTF8.GetBytes("null"),
            Encoding.UTF8.GetBytes("{}{}"),
            "MThd\0\0\0\u0006"u8.ToArray(),
            [],
        ];
        Assert.All(files, f => Assert.IsType<Reading<Arrangement>.Refused>(ArrangementJson.Read(Name, f)));
    }
}
