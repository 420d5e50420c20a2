using System.Text;
using Revoicer.Cli.Streams;
using Xunit;

namespace Revoicer.Cli.Tests.Streams;

public sealed class StandardStreamTests : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly MemoryStream _bytes = new();

    public void Dispose() => _bytes.Dispose();

    [Fact]
    public void Text_goes_out_at_once_and_what_a_terminal_would_obey_is_shown()
    {
        using var stream = To(isTerminal: true);
        stream.WriteLine("Fähre \u001b[31m");
        stream.Write('\u202e');
        Assert.Equal("Fähre \\u001b[31m\n\\u202e", Written());
    }

    [Fact]
    public void Every_shipped_file_goes_out_byte_by_byte()
    {
        using var stream = To(isTerminal: false);
        var texts = Revoicer.Bells.ShippedTowers.Names.Select(Revoicer.Bells.ShippedTowers.Text)
            .Concat(Revoicer.Sounds.ShippedSounds.Names.Select(Revoicer.Sounds.ShippedSounds.Text)).ToArray();
        foreach (var text in texts)
        {
            stream.Write(text);
        }

        Assert.Equal(string.Concat(texts), Written());
    }

    [Fact]
    public void Words_at_the_foot_give_way_to_text()
    {
        using var stream = To(isTerminal: true);
        stream.ShowPassing("ebb");
        stream.ShowPassing("flood");
        stream.Say("done");
        Assert.Equal("ebb\r   \rflood\r     \rdone\n", Written());
    }

    [Fact]
    public void Elsewhere_than_on_a_terminal_nothing_stands_at_the_foot()
    {
        using var stream = To(isTerminal: false);
        stream.ShowPassing("ebb");
        Assert.True(stream.IsUntouched);
        Assert.Equal("", Written());
    }

    [Fact]
    public void A_closed_stream_says_so_when_something_is_written()
    {
        using var stream = new StandardStream("standard output", null, Utf8, isTerminal: false);
        stream.Write("");
        Assert.Contains("the standard output could not be written to: it is closed", Assert.Throws<UnwritableException>(() => stream.Write("x")).Sentence, StringComparison.Ordinal);
        Assert.Throws<UnwritableException>(stream.MustBeOpen);
    }

    [Fact]
    public void A_sentence_with_a_name_of_two_lines_stays_on_one()
    {
        using var stream = To(isTerminal: false);
        stream.Say("ebb\nwrote quay.mid: no such file");
        stream.Say((string?)null);
        Assert.Equal("ebb\\u000awrote quay.mid: no such file\n", Written());
    }

    private StandardStream To(bool isTerminal) => new("standard error", _bytes, Utf8, isTerminal);

    private string Written() => Utf8.GetString(_bytes.ToArray());
}
