using Revoicer.Cli.Files;
using Revoicer.LeadSheets;
using Xunit;

namespace Revoicer.Cli.Tests.Files;

public sealed class MidiPassageFileTests : IDisposable
{
    // Format 0, 96 ticks a quarter: a quarter of A4.
    private static readonly byte[] OneNote =
    [
        .. "MThd"u8, 0, 0, 0, 6, 0, 0, 0, 1, 0, 96,
        .. "MTrk"u8, 0, 0, 0, 12, 0, 0x90, 69, 80, 96, 0x80, 69, 0, 0, 0xFF, 0x2F, 0,
    ];

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("quay.mid")]
    [InlineData("quay.MIDI")]
    public void A_file_is_read_by_its_ending_and_its_warnings_are_told(string name)
    {
        var path = Put(name, OneNote);
        var (passage, error) = Read(path);
        Assert.Equal("quay", passage!.Sheet.Title);
        Assert.Equal([69], passage.Heard(Assert.Single(passage.Voices)).Select(n => n.Note.Midi));
        Assert.Equal(
            $"warning: {path}: the file has no metre; 4/4 is assumed; expected a time signature\n"
            + $"warning: {path}: the file has no tempo; 120 quarters a minute are assumed, as the standard says; expected a tempo\n",
            error);
    }

    [Fact]
    public void A_broken_file_is_told_with_the_byte()
    {
        var path = Put("quay.mid", OneNote[..20]);
        Assert.Equal((null, $"{path}: the file ends inside the chunk at byte 14, with 0 of 1 tracks read; expected the whole file; export or copy it again\n"), Read(path));
    }

    [Fact]
    public void A_file_that_is_too_large_is_not_read()
    {
        var path = Put("quay.mid", new byte[(4 * 1024 * 1024) + 1]);
        Assert.Equal((null, $"{path}: the file has more than 4194304 bytes; expected a MIDI file of at most so many\n"), Read(path));
    }

    [Fact]
    public void A_file_that_is_not_there_and_one_of_another_kind_are_told()
    {
        var path = _scratch.At("quay.mid");
        Assert.Equal((null, $"{path}: cannot be opened: there is no such file; check the name\n"), Read(path));
        Assert.StartsWith("quay.wav: not a kind of file that holds a passage; expected a .mid", Read("quay.wav").Error, StringComparison.Ordinal);
    }

    private string Put(string name, byte[] bytes)
    {
        File.WriteAllBytes(_scratch.At(name), bytes);
        return _scratch.At(name);
    }

    private static (Passage? Passage, string Error) Read(string path)
    {
        using var error = new StringWriter { NewLine = "\n" };
        return (PassageFile.Read(path, null, error), error.ToString());
    }
}
