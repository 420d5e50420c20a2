using FsCheck.Xunit;
using NAudio.Midi;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Writing.Midi;
using Xunit;

namespace Revoicer.Tests.Writing.Midi;

public class MidiWritingTests
{
    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void A_walk_through_the_bytes_meets_exactly_the_strokes(Arrangement arrangement)
    {
        var walk = MidiWalk.Through(MidiWriting.Bytes(arrangement));
        var found = walk.Tracks.SelectMany((track, i) => track.Where(e => e.IsOn)
            .Select(e => (Track: i, Channel: e.Status & 0x0F, e.Tick, Pitch: (int)e.Data[0], Velocity: (int)e.Data[1])));
        Assert.Equal(
            Expected(arrangement, walk.Division).Select(n => (n.IsPedal ? 2 : 1, n.IsPedal ? 1 : 0, n.Tick, n.Pitch, n.Velocity)).Order(),
            found.Order());
    }

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void The_library_reads_exactly_the_strokes_back(Arrangement arrangement)
    {
        using var stream = new MemoryStream(MidiWriting.Bytes(arrangement));
        var file = new MidiFile(stream, strictChecking: true);
        Assert.Equal(1, file.FileFormat);
        Assert.Equal(3, file.Tracks);
        var found = Enumerable.Range(0, file.Tracks).SelectMany(i => file.Events[i].OfType<NoteOnEvent>()
            .Select(e => (Track: i, e.Channel, e.AbsoluteTime, e.NoteNumber, e.Velocity)));
        Assert.Equal(
            Expected(arrangement, file.DeltaTicksPerQuarterNote).Select(n => (n.IsPedal ? 2 : 1, n.IsPedal ? 2 : 1, n.Tick, n.Pitch, n.Velocity)).Order(),
            found.Order());
    }

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void Seconds_in_the_file_differ_from_the_strokes_by_one_constant(Arrangement arrangement)
    {
        var walk = MidiWalk.Through(MidiWriting.Bytes(arrangement));
        var speeds = walk.Tracks[0].Where(e => e.IsMeta(0x51)).Select(e => (e.Tick, Quarter: e.MetaNumber / 1e6)).ToArray();
        var notes = walk.Tracks.Skip(1).SelectMany(t => t.Where(e => e.IsOn)).Select(e => SecondsAt(e.Tick)).Order();
        var late = notes.Zip(arrangement.Strokes.Select(s => s.At.Value).Order(), (midi, at) => midi - at).ToArray();

        // A lead is off by half a tick at most, and a tempo is held to half a microsecond a quarter.
        var tick = speeds.Max(s => s.Quarter) / walk.Division;
        var drift = 1e-6 * walk.Tracks[0][^1].Tick / walk.Division;
        Assert.True(late.Length == 0 || late.Max() - late.Min() <= tick + drift, string.Join(' ', late));

        double SecondsAt(long place) => SecondsTo(place, speeds, walk.Division);
    }

    // 4 s is what the writer promises, whatever the speed does meanwhile; a bell struck again and the end of the track end a
    // note before that.
    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void A_bell_rings_for_four_seconds_unless_it_is_struck_again(Arrangement arrangement) =>
        AssertRings(MidiWalk.Through(MidiWriting.Bytes(arrangement)));

    [Fact]
    public void A_ring_is_as_long_over_a_change_of_tempo()
    {
        // One quarter at 60 lasts 1 s; from then on a quarter lasts 0.25 s, so that 3 s more are 12 quarters.
        var tempi = new TempoMap([new TempoChange(Beats.Zero, new Tempo(Beats.OfQuarters(1), 60)), new TempoChange(Beats.OfQuarters(1), new Tempo(Beats.OfQuarters(1), 240))]);
        var bars = Enumerable.Range(0, 4).Select(i => new ArrangedBar(i + 1, 1, Beats.OfQuarters(4 * i), Beats.OfQuarters(4), new Meter(4, 4)));
        var walk = MidiWalk.Through(MidiWriting.Bytes(SampleArrangements.OneStroke with { Tempi = tempi, Bars = bars.ToItems() }));
        var track = walk.Tracks[1];

        Assert.Equal(13L * walk.Division, track.Single(e => e.IsOff).Tick - track.Single(e => e.IsOn).Tick);
        AssertRings(walk);
    }

    private static void AssertRings(MidiWalk walk)
    {
        var speeds = walk.Tracks[0].Where(e => e.IsMeta(0x51)).Select(e => (e.Tick, Quarter: e.MetaNumber / 1e6)).ToArray();
        var ends = walk.Tracks.Skip(1).SelectMany(t => t.Where(e => e.IsOff)).ToLookup(e => e.Data[0], e => e.Tick);
        var begins = walk.Tracks.Skip(1).SelectMany(t => t.Where(e => e.IsOn)).ToLookup(e => e.Data[0], e => e.Tick);
        foreach (var (pitch, on) in begins.SelectMany(b => b.Select(on => (b.Key, on))))
        {
            var off = ends[pitch].Where(t => t > on).Min();
            var cut = begins[pitch].Where(t => t > on).Append(walk.Tracks[0][^1].Tick).Min();
            var rings = SecondsTo(off, speeds, walk.Division) - SecondsTo(on, speeds, walk.Division);
            var tick = 2 * speeds.Max(s => s.Quarter) / walk.Division;
            Assert.True(off == cut ? rings <= 4 + tick : Math.Abs(rings - 4) <= tick, $"note {pitch} from {on} to {off}: {rings} s");
        }
    }

    private static double SecondsTo(long place, (long Tick, double Quarter)[] speeds, int division)
    {
        var seconds = 0.0;
        for (var i = 0; i < speeds.Length && speeds[i].Tick <= place; i++)
        {
            var until = i + 1 < speeds.Length ? Math.Min(place, speeds[i + 1].Tick) : place;
            seconds += (until - speeds[i].Tick) * speeds[i].Quarter / division;
        }

        return seconds;
    }

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void Every_note_ends_once_and_never_after_its_bell_is_struck_again(Arrangement arrangement)
    {
        var walk = MidiWalk.Through(MidiWriting.Bytes(arrangement));
        foreach (var track in walk.Tracks)
        {
            var sounding = new HashSet<byte>();
            foreach (var e in track.Where(e => e.IsOn || e.IsOff))
            {
                Assert.True(e.IsOn ? sounding.Add(e.Data[0]) : sounding.Remove(e.Data[0]), $"note {e.Data[0]} at {e.Tick}");
            }

            Assert.Empty(sounding);
        }
    }

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void Every_bar_begins_on_a_bar_line_of_the_file(Arrangement arrangement)
    {
        var walk = MidiWalk.Through(MidiWriting.Bytes(arrangement));
        var metres = walk.Tracks[0].Where(e => e.IsMeta(0x58)).ToArray();
        var leadIn = walk.Tracks[1][^1].Tick - EndWithoutLeadIn(arrangement, walk.Division);
        Assert.All(arrangement.Bars, bar =>
        {
            var tick = leadIn + Ticks(bar.Start, walk.Division);
            var metre = metres.Last(m => m.Tick <= tick);
            var length = 4L * walk.Division * metre.Data[1] / (1 << metre.Data[2]);
            Assert.Equal(0, (tick - metre.Tick) % length);
        });
    }

    [Law(Arbitrary = [typeof(ArrangementGens)], MaxTest = 20)]
    public void The_same_arrangement_gives_the_same_bytes(Arrangement arrangement) =>
        Assert.Equal(MidiWriting.Bytes(arrangement), MidiWriting.Bytes(arrangement with { }));

    [Fact]
    public void The_conductor_track_has_title_key_tempi_and_metres()
    {
        var walk = MidiWalk.Through(MidiWriting.Bytes(SampleArrangements.HarbourLights));
        var conductor = walk.Tracks[0];
        Assert.Equal(960, walk.Division);
        Assert.Equal("Harbour Lights", conductor.Single(e => e.IsMeta(0x03)).MetaText);
        Assert.Equal([0x59, 0, 0], conductor.Single(e => e.IsMeta(0x59)).Data);

        // 60,000,000 / 84 and / 60 microseconds a quarter.
        Assert.Equal([(0L, 714_286), (17L * 960, 1_000_000)], conductor.Where(e => e.IsMeta(0x51)).Select(e => (e.Tick, e.MetaNumber)));

        // The pickup of one quarter is a bar of 1/4.
        Assert.Equal([(0L, 1, 2), (960L, 4, 2)], conductor.Where(e => e.IsMeta(0x58)).Select(e => (e.Tick, (int)e.Data[1], (int)e.Data[2])));
        Assert.Equal(["Manual", "Pedal"], walk.Tracks.Skip(1).Select(t => t.Single(e => e.IsMeta(0x03)).MetaText));

        // General MIDI 1: program 15, counted from 1, is Tubular Bells.
        Assert.All(walk.Tracks.Skip(1), t => Assert.Equal([14], t.Single(e => (e.Status & 0xF0) == 0xC0).Data));

        // 21 quarters of music, two bars of ring.
        Assert.All(walk.Tracks, t => Assert.Equal(29 * 960, t[^1].Tick));
    }

    [Fact]
    public void A_roll_into_the_first_beat_has_one_beat_of_lead_in()
    {
        var walk = MidiWalk.Through(MidiWriting.Bytes(SampleArrangements.RollIntoTheStart));
        Assert.Equal([(0L, 1), (960L, 3)], walk.Tracks[0].Where(e => e.IsMeta(0x58)).Select(e => (e.Tick, (int)e.Data[1])));

        // 0.12 s and 0.06 s at 100 a minute are 192 and 96 ticks.
        Assert.Equal([960 - 96L, 960L], walk.Tracks[1].Where(e => e.IsOn).Select(e => e.Tick));
        Assert.Equal([960 - 192L], walk.Tracks[2].Where(e => e.IsOn).Select(e => e.Tick));
    }

    [Fact]
    public void A_piece_without_a_lead_before_it_begins_at_the_first_tick() =>
        Assert.Equal(0, MidiWalk.Through(MidiWriting.Bytes(SampleArrangements.HarbourLights)).Tracks[1].First(e => e.IsOn).Tick);

    [Fact]
    public void Written_pitch_is_what_the_player_reads_and_sounding_pitch_what_is_heard()
    {
        Assert.Equal(60, PitchOfTheOnlyStroke(MidiPitch.Written));
        Assert.Equal(72, PitchOfTheOnlyStroke(MidiPitch.Sounding));

        static int PitchOfTheOnlyStroke(MidiPitch pitch) =>
            MidiWalk.Through(MidiWriting.Bytes(SampleArrangements.OneStroke, pitch)).Tracks[1].Single(e => e.IsOn).Data[0];
    }

    [Fact]
    public void A_title_beyond_Latin_1_is_written_as_UTF_8()
    {
        var bytes = MidiWriting.Bytes(SampleArrangements.OneStroke with { Title = "Re\u266D \uD83D\uDD14" });
        Assert.Equal("Re\u266D \uD83D\uDD14", MidiWalk.Through(bytes).Tracks[0].Single(e => e.IsMeta(0x03)).MetaText);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-60)]
    [InlineData(3.5)]
    [InlineData(200_000_000)]
    [InlineData(double.NaN)]
    public void A_tempo_that_the_file_cannot_hold_is_not_written(double perMinute)
    {
        var tempi = TempoMap.Steady(new Tempo(Beats.OfQuarters(1), perMinute));
        Assert.Throws<ArgumentOutOfRangeException>(() => MidiWriting.Bytes(SampleArrangements.OneStroke with { Tempi = tempi }));
    }

    [Theory]
    [InlineData(0, 80)]
    [InlineData(8, 127)]
    [InlineData(-12.0412, 40)] // a quarter of the amplitude, half the velocity: 40 log10(1/2)
    [InlineData(60, 127)]
    [InlineData(-200, 1)]
    public void Touch_becomes_velocity_by_the_square_law(double decibels, int velocity) =>
        Assert.Equal(velocity, MidiNote.VelocityOf(new Decibels(decibels)));

    // Written down once more and in another way: from time, not from the tempo map walked backward.
    private static IEnumerable<(bool IsPedal, long Tick, int Pitch, int Velocity)> Expected(Arrangement arrangement, int division)
    {
        var ticks = arrangement.Strokes.Select(s => Ticks(s.Beat, division) - LeadTicks(arrangement.Tempi, s, division)).ToArray();
        var beat = Ticks(arrangement.Bars[0].Meter.Beat, division);
        var leadIn = beat * (long)Math.Ceiling(Math.Max(0, -ticks.Append(0).Min()) / (double)beat);
        return arrangement.Strokes.Zip(ticks, (s, tick) => (
            s.IsPedal,
            leadIn + tick,
            s.Note.Midi + arrangement.Tower.Transposition.Semitones,
            MidiNote.VelocityOf(s.Level)));
    }

    private static long LeadTicks(TempoMap tempi, Stroke stroke, int division)
    {
        if (stroke.Lead == Seconds.Zero)
        {
            return 0;
        }

        var time = tempi.At(stroke.Beat).Value - stroke.Lead.Value;
        var change = tempi.Changes.LastOrDefault(c => tempi.At(c.From).Value <= time);
        change = change.Tempo.PerMinute == 0 ? tempi.Changes[0] : change;
        var quarters = change.From.Quarters + ((time - tempi.At(change.From).Value) * change.Tempo.QuartersPerMinute / 60);
        return (long)Math.Floor(((stroke.Beat.Quarters - quarters) * division) + 0.5);
    }

    private static long EndWithoutLeadIn(Arrangement arrangement, int division)
    {
        var last = arrangement.Bars[^1];
        return Ticks(last.Start + last.Length + (last.Meter.Bar * 2), division);
    }

    private static long Ticks(Beats place, int division)
    {
        var ticks = place * division;
        Assert.Equal(1, ticks.Denominator);
        return ticks.Numerator;
    }
}
