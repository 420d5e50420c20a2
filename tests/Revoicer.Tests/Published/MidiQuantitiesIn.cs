using Revoicer.LeadSheets.Midi;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// Variable-length quantities as printed in the Standard MIDI Files 1.0 specification (MIDI Manufacturers Association,
/// table of examples), read, and written where a file is put down plainly.
/// </summary>
public sealed class MidiQuantitiesIn
{
    [Theory]
    [InlineData(0x00000000, "00")]
    [InlineData(0x00000040, "40")]
    [InlineData(0x0000007F, "7F")]
    [InlineData(0x00000080, "81 00")]
    [InlineData(0x00002000, "C0 00")]
    [InlineData(0x00003FFF, "FF 7F")]
    [InlineData(0x00004000, "81 80 00")]
    [InlineData(0x00100000, "C0 80 00")]
    [InlineData(0x001FFFFF, "FF FF 7F")]
    [InlineData(0x00200000, "81 80 80 00")]
    [InlineData(0x08000000, "C0 80 80 00")]
    [InlineData(0x0FFFFFFF, "FF FF FF 7F")]
    public void A_quantity_is_read_and_written_as_printed(int value, string printed)
    {
        var bytes = Convert.FromHexString(printed.Replace(" ", "", StringComparison.Ordinal));
        var cursor = new ByteCursor(bytes, 0, bytes.Length);
        Assert.Equal(value, cursor.Quantity());
        Assert.Equal(0, cursor.Left);
        Assert.Equal(bytes, PlainFile.Quantity(value));

        // Without its last byte it is none.
        Assert.Null(new ByteCursor(bytes, 0, bytes.Length - 1).Quantity());
    }

    [Fact]
    public void A_quantity_has_at_most_four_bytes() =>
        Assert.Null(new ByteCursor([0x81, 0x80, 0x80, 0x80, 0x00], 0, 5).Quantity());

    [Fact]
    public void The_printed_values_are_those_of_the_reference()
    {
        var lines = SharedFiles.LinesOrSkip("reference", "midi-vlq.tsv");
        var here = typeof(MidiQuantitiesIn).GetMethod(nameof(A_quantity_is_read_and_written_as_printed))!
            .GetCustomAttributes(typeof(InlineDataAttribute), false)
            .Select(a => ((InlineDataAttribute)a).Data)
            .Select(d => $"{d[0]:X8}\t{d[0]}\t{d[1]}");
        Assert.Equal(lines.Skip(1), here);
    }
}
