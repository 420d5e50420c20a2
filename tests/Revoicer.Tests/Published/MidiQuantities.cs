using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Tests.Writing;
using Revoicer.Tests.Writing.Midi;
using Revoicer.Values;
using Revoicer.Writing.Midi;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// Variable-length quantities as printed in the Standard MIDI Files 1.0 specification (MIDI Manufacturers Association,
/// table of examples), looked for in the delta times of files that are written.
/// </summary>
public class MidiQuantities
{
    [Theory]
    [MemberData(nameof(PrintedQuantities.OfStrokes), MemberType = typeof(PrintedQuantities))]
    public void A_delta_time_is_written_as_printed(int ticks, string bytes)
    {
        // The division is 960, so a stroke this many 960ths of a quarter late has the delta time asked for.
        var late = SampleArrangements.OneStroke.Strokes[0] with { Beat = Beats.OfQuarters(ticks, 960) };
        var walk = MidiWalk.Through(MidiWriting.Bytes(SampleArrangements.OneStroke with { Strokes = [late] }));
        Assert.Equal(960, walk.Division);

        // Track name, program, note on: the third event of the manual, after those of the conductor.
        var place = walk.Tracks[0].Count + 2;
        Assert.Equal(bytes, BitConverter.ToString(walk.Deltas[place]).Replace('-', ' '));
    }

    [Fact]
    public void The_largest_delta_time_still_fits()
    {
        // A silent piece of 0x0FFFFFFF ticks with its two bars of ring, on a division of 960: its end comes in one delta.
        var quarters = Beats.OfQuarters(0x0FFF_FFFF, 960);
        var bar = SampleArrangements.OneStroke.Bars[0];
        var start = quarters - (bar.Length * 3);
        var silent = SampleArrangements.OneStroke with { Strokes = [], Bars = [bar with { Start = start }] };
        var walk = MidiWalk.Through(MidiWriting.Bytes(silent));
        Assert.Equal(960, walk.Division);
        Assert.Contains(walk.Deltas, d => BitConverter.ToString(d) == "FF-FF-FF-7F");
    }
}
