using Revoicer.LeadSheets;
using Revoicer.Music;
using Xunit;
using static Revoicer.Tests.LeadSheets.Midi.MidiBytes;

namespace Revoicer.Tests.LeadSheets.Midi;

public sealed class MidiReaderTests
{
    private static readonly (long, byte[])[] Head = [Name("Lamps on the Quay"), Metre(0, 3, 4), Speed(0, 625_000), Key(0, -2, isMinor: true)];

    [Fact]
    public void Tracks_become_voices_and_the_first_track_says_the_rest()
    {
        var passage = Clean(File(
            1,
            480,
            Track(Head),
            Track([Name("Manual"), .. Note(67, 0, 480), .. Note(70, 480, 1440), .. Note(66, 1440, 2880)]),
            Track([Name("Pedal"), .. Note(43, 0, 2880, channel: 2)])));

        Assert.Equal("Lamps on the Quay", passage.Sheet.Title);
        Assert.Equal("G minor", passage.Sheet.Key.ToString());

        // 60,000,000 / 625,000 microseconds.
        Assert.Equal(new Tempo(Beats.OfQuarters(1), 96), passage.Sheet.Tempo);
        Assert.Equal(["Manual", "Pedal"], passage.Voices.Select(v => v.Name));
        Assert.Equal(["G4 0 +1", "A#4 1 +2", "F#4 3 +3"], Heard(passage));
        Assert.Equal(["G2 0 +6"], Heard(passage, 1));
        Assert.Equal([1, 2], passage.Sheet.Bars.Select(b => b.Number));
        Assert.All(passage.Sheet.Bars, bar => Assert.Equal((Beats.OfQuarters(3), new Meter(3, 4)), (bar.Length, bar.Meter)));
        Assert.True(passage.Sheet.Bars[^1].EndsSection);
        Assert.All(passage.Sheet.Bars, bar => Assert.Null(Assert.Single(bar.Chords).Symbol));

        // In G minor a B flat, and the raised seventh an F sharp (common practice).
        Assert.Equal(["G", "Bb", "F#"], passage.Voices[0].Bars.SelectMany(b => b).Select(n => n.Name.ToString()));

        // Over the bar line by a tie.
        Assert.Equal([true, false], passage.Voices[1].Bars.SelectMany(b => b).Select(n => n.IsTiedOn));
    }

    [Fact]
    public void A_file_of_one_track_has_a_voice_for_each_channel_and_its_name_is_the_title()
    {
        var passage = Clean(File(0, 96, Track([.. Head, .. Note(72, 0, 96, 1), .. Note(60, 0, 288, 4), .. Note(74, 96, 288, 1)])));
        Assert.Equal("Lamps on the Quay", passage.Sheet.Title);
        Assert.Equal(["channel 1", "channel 4"], passage.Voices.Select(v => v.Name));
        Assert.Equal(["C5 0 +1", "D5 1 +2"], Heard(passage));
        Assert.Equal(["C4 0 +3"], Heard(passage, 1));
    }

    [Fact]
    public void Voices_of_one_name_of_none_and_of_several_channels_are_told_apart()
    {
        var passage = Clean(File(
            1,
            96,
            Track([Name("Bells"), .. Head.Skip(1), .. Note(72, 0, 96)]),
            Track([Name("Bells"), .. Note(60, 0, 96)]),
            Track([.. Note(62, 0, 96)]),
            Track([Name("Keys"), .. Note(64, 0, 96, 1), .. Note(65, 0, 96, 2)])));
        Assert.Equal(["Bells", "Bells (2)", "3", "Keys, channel 1", "Keys, channel 2"], passage.Voices.Select(v => v.Name));

        // The first track has notes: its name is that of an instrument.
        Assert.Equal("quay", passage.Sheet.Title);
    }

    [Fact]
    public void The_only_track_of_a_file_that_may_have_several_is_a_voice()
    {
        var passage = Clean(File(1, 96, Track([.. Head, .. Note(72, 0, 96)])));
        Assert.Equal(("quay", "Lamps on the Quay"), (passage.Sheet.Title, Assert.Single(passage.Voices).Name));
    }

    [Fact]
    public void Running_status_and_ends_by_velocity_0_are_read()
    {
        byte[] events = [0, 0x90, 72, 80, 96, 72, 0, 0, 74, 80, 96, 74, 0, 0, 0xFF, 0x2F, 0];
        var passage = Accepted(File(0, 96, events)).Value;
        Assert.Equal(["C5 0 +1", "D5 1 +1"], Heard(passage));
    }

    [Fact]
    public void Whatever_is_no_note_is_passed_over()
    {
        var passage = Clean([
            .. Chunk("MThd", [0, 1, 0, 1, 0, 96, 7, 7]),
            .. Chunk("XFIH", [1, 2, 3]),
            .. Chunk("MTrk", Track([
                .. Head,
                (0, [0xF0, 5, 0x7E, 0x7F, 9, 1, 0xF7]),
                (0, [0xC0, 14]),
                (0, [0xB0, 64, 127]),
                (10, [0xE0, 0, 80]),
                (20, [0xA0, 72, 1]),
                (30, [0xD0, 1]),
                (40, [0xF7, 2, 0xF3, 1]),
                Meta(50, 0x01, "fog"u8.ToArray()),
                Meta(50, 0x7F),
                .. Note(72, 0, 96)])),
            .. Chunk("LOOP", [])]);
        Assert.Equal(["C5 0 +1"], Heard(passage));
    }

    [Fact]
    public void Metres_keys_and_tempi_change_where_they_stand()
    {
        var passage = Clean(File(
            1,
            480,
            Track([.. Head, Metre(1440, 6, 8), Speed(1440, 500_000), Key(1440, 3), Speed(1680, 250_000)]),
            Track([.. Note(70, 0, 1440), .. Note(73, 1440, 2880), .. Note(70, 2880, 4320)])));
        Assert.Equal(["3/4", "6/8", "6/8"], passage.Sheet.Bars.Select(b => b.Meter.ToString()));
        Assert.Equal([null, "A major", null], passage.Sheet.Bars.Select(b => b.Key?.ToString()));

        // In 6/8 dotted quarters are counted: 120 and 240 quarters a minute.
        Assert.Equal(
            [(Beats.Zero, new Tempo(Beats.OfQuarters(3, 2), 80)), (Beats.OfQuarters(1, 2), new Tempo(Beats.OfQuarters(3, 2), 160))],
            passage.Sheet.Bars[1].Tempi.Select(t => (t.From, t.Tempo)));
        Assert.Equal(["Bb", "C#", "A#"], passage.Voices[0].Bars.SelectMany(b => b).Select(n => n.Name.ToString()));
    }

    [Fact]
    public void A_metre_inside_a_bar_begins_a_new_one()
    {
        var accepted = Accepted(File(1, 480, Track([.. Head, Metre(3 * 480, 4, 4), Metre(5 * 480, 3, 4)]), Track(Note(72, 0, 8 * 480))));
        Assert.Equal([3, 2, 3], accepted.Value.Sheet.Bars.Select(b => b.Length.Quarters));
        Assert.Equal(["quay.mid: bar 2 has 2 quarters and is taken as it is; expected 4 quarters in 4/4\n"], accepted.Warnings.Select(w => w.ToString()));
    }

    [Fact]
    public void A_first_bar_that_a_metre_cuts_short_is_a_pickup()
    {
        var sheet = Clean(File(1, 480, Track([.. Head, Metre(480, 3, 4)]), Track(Note(72, 0, 4 * 480)))).Sheet;
        Assert.Equal([(0, 1.0, 2.0), (1, 3.0, 0.0)], sheet.Bars.Select(b => (b.Number, b.Length.Quarters, b.Offset.Quarters)));
    }

    [Fact]
    public void A_tempo_is_told_in_as_few_digits_as_say_it()
    {
        // 60,000,000 / 84 = 714,285.7 microseconds: what files have for 84 a minute.
        Assert.Equal(84, Tempo(714_286));
        Assert.Equal(88.33, Tempo(679_271), 5);

        static double Tempo(int microseconds) =>
            Clean(File(1, 96, Track(Metre(0, 4, 4), Speed(0, microseconds)), Track(Note(72, 0, 96)))).Sheet.Tempo!.Value.PerMinute;
    }

    [Fact]
    public void Notes_without_a_key_are_named_by_the_signature_that_holds_most_of_them()
    {
        Assert.Equal(["Eb", "F", "G", "Ab", "Bb"], Names(63, 65, 67, 68, 70));
        Assert.Equal(["E", "F#", "G#", "A", "B"], Names(64, 66, 68, 69, 71));

        static IEnumerable<string> Names(params int[] pitches) =>
            Clean(File(1, 96, Track(Metre(0, 5, 4), Speed(0, 500_000)), Track([.. pitches.SelectMany((p, i) => Note(p, i * 96, (i + 1) * 96))])))
                .Voices[0].Bars[0].Select(n => n.Name.ToString());
    }

    [Fact]
    public void A_note_struck_again_begins_anew_and_the_first_that_began_ends_first()
    {
        var passage = Clean(File(1, 96, Track(Head), Track([.. Note(72, 0, 192), .. Note(72, 96, 288)])));
        Assert.Equal(["C5 0 +1", "C5 1 +2"], Heard(passage));
    }

    [Fact]
    public void What_has_no_partner_is_told()
    {
        var accepted = Accepted(File(1, 96, Track(Head), Track([Name("Pedal"), (0, [0x91, 48, 80]), .. Note(52, 0, 96, 2), (96, [0x81, 50, 0]), Meta(288, 0x01)])));
        Assert.Equal(["C3 0 +3", "E3 0 +1"], Heard(accepted.Value));
        Assert.Equal(
            [
                "quay.mid: in 'Pedal', channel 2, 1 note never ends and lasts to the end of the track; expected an end for each note\n",
                "quay.mid: in 'Pedal', channel 2, 1 end belongs to no note and is passed over; expected an end for each note\n",
            ],
            accepted.Warnings.Select(w => w.ToString()));
    }

    [Fact]
    public void Percussion_is_passed_over_with_a_warning()
    {
        var accepted = Accepted(File(1, 96, Track(Head), Track([.. Note(38, 0, 96, 10), .. Note(38, 96, 192, 10), .. Note(72, 0, 96)])));
        Assert.Single(accepted.Value.Voices);
        Assert.Equal(["C5 0 +1"], Heard(accepted.Value));
        Assert.Equal("2 notes of percussion on channel 10 are passed over", Assert.Single(accepted.Warnings).Found);
    }

    [Fact]
    public void A_file_that_says_nothing_of_metre_and_tempo_is_read_as_the_standard_says()
    {
        var accepted = Accepted(File(0, 96, Track(Note(72, 0, 96))));
        Assert.Equal((new Meter(4, 4), 120.0), (accepted.Value.Sheet.Bars[0].Meter, accepted.Value.Sheet.Tempo!.Value.QuartersPerMinute));
        Assert.Null(accepted.Value.Sheet.Key);
        Assert.Equal(
            ["the file has no metre; 4/4 is assumed", "the file has no tempo; 120 quarters a minute are assumed, as the standard says"],
            accepted.Warnings.Select(w => w.Found));
    }
}
