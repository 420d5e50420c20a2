using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// Variable-length quantities as printed in the Standard MIDI Files 1.0 specification (MIDI Manufacturers Association,
/// table of examples).
/// </summary>
public sealed class PrintedQuantities
{
    private static readonly (int Value, string Bytes)[] Printed =
    [
        (0x00000000, "00"),
        (0x00000040, "40"),
        (0x0000007F, "7F"),
        (0x00000080, "81 00"),
        (0x00002000, "C0 00"),
        (0x00003FFF, "FF 7F"),
        (0x00004000, "81 80 00"),
        (0x00100000, "C0 80 00"),
        (0x001FFFFF, "FF FF 7F"),
        (0x00200000, "81 80 80 00"),
        (0x08000000, "C0 80 80 00"),
        (0x0FFFFFFF, "FF FF FF 7F"),
    ];

    public static TheoryData<int, string> All => [.. Printed.Select(p => (p.Value, p.Bytes))];

    /// <summary>All but the largest: two bars of ring after a stroke so late have no room in a file.</summary>
    public static TheoryData<int, string> OfStrokes => [.. Printed.SkipLast(1).Select(p => (p.Value, p.Bytes))];

    [Fact]
    public void The_printed_values_are_those_of_the_reference() => Assert.Equal(
        SharedFiles.LinesOrSkip("reference", "midi-vlq.tsv").Skip(1), Printed.Select(p => $"{p.Value:X8}\t{p.Value}\t{p.Bytes}"));
}
