using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.Smf;
using Revoicer.Tests.Writing;
using Revoicer.Text;
using Revoicer.Writing.Midi;
using Xunit;

namespace Revoicer.Tests.Smf;

/// <summary>What is written is what is read.</summary>
public sealed class SmfWritingTests
{
    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void What_is_read_of_a_file_is_written_as_the_same_bytes(Arrangement arrangement)
    {
        // A title of blanks, or one that a reader cuts, is no name.
        var bytes = MidiWriting.Bytes(arrangement with { Title = "Lamps on the Quay" });
        var remarks = new Remarks();
        var file = Assert.IsType<SmfFile>(SmfReading.Read(bytes, Place.WholeFile("quay.mid"), remarks));

        Assert.Equal(bytes, SmfWriting.Bytes(file));
        Assert.Empty(remarks.Warnings);
    }
}
