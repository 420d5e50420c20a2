using Revoicer.Smf;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// Variable-length quantities as printed in the Standard MIDI Files 1.0 specification (MIDI Manufacturers Association,
/// table of examples), as the walk through a file reads them.
/// </summary>
public sealed class MidiQuantitiesIn
{
    [Theory]
    [MemberData(nameof(PrintedQuantities.All), MemberType = typeof(PrintedQuantities))]
    public void A_quantity_is_read_as_printed(int value, string printed)
    {
        var bytes = Convert.FromHexString(printed.Replace(" ", "", StringComparison.Ordinal));
        var cursor = new ByteCursor(bytes, 0, bytes.Length);
        Assert.Equal(value, cursor.Quantity());
        Assert.Equal(0, cursor.Left);

        // Without its last byte it is none.
        Assert.Null(new ByteCursor(bytes, 0, bytes.Length - 1).Quantity());
    }

    [Fact]
    public void A_quantity_has_at_most_four_bytes() =>
        Assert.Null(new ByteCursor([0x81, 0x80, 0x80, 0x80, 0x00], 0, 5).Quantity());
}
