using System.Text;
using Revoicer.Text;

namespace Revoicer.Cli.Streams;

/// <summary>
/// The one way by which text leaves the program for a terminal, or for what stands in its place: what a terminal would
/// obey instead of showing it is made visible. Written at once; a fault of writing is an <see cref="UnwritableException"/>,
/// but a reader that has gone away.
/// </summary>
internal sealed class StandardStream : TextWriter
{
    private readonly Lock _lock = new();
    private readonly StreamWriter? _writer;
    private readonly bool _isTerminal;
    private int _passing;

    /// <summary>Text onto a stream.</summary>
    /// <param name="name">What the stream is called: "standard output".</param>
    /// <param name="stream">Where the bytes go; null where it was closed before the program began.</param>
    /// <param name="encoding">How characters become bytes.</param>
    /// <param name="isTerminal">Whether it leads to a terminal.</param>
    public StandardStream(string name, Stream? stream, Encoding encoding, bool isTerminal)
    {
        (Name, Encoding, _isTerminal) = (name, encoding, isTerminal);
        _writer = stream is null ? null : new StreamWriter(stream, encoding) { AutoFlush = true };
        CoreNewLine = ['\n'];
    }

    /// <summary>The program's results.</summary>
    public static StandardStream Output() => Of("standard output", 1, Console.OpenStandardOutput, Console.IsOutputRedirected);

    /// <summary>Problems and progress.</summary>
    public static StandardStream Error() => Of("standard error", 2, Console.OpenStandardError, Console.IsErrorRedirected);

    /// <summary>What the stream is called.</summary>
    public string Name { get; }

    /// <summary>Whether nothing has been written yet.</summary>
    public bool IsUntouched { get; private set; } = true;

    /// <summary>Whether it leads to a terminal.</summary>
    public bool IsTerminal => _isTerminal;

    /// <inheritdoc/>
    public override Encoding Encoding { get; }

    /// <inheritdoc/>
    public override void Write(char value) => Write(value.ToString());

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<char> buffer) => Write(buffer.ToString());

    /// <inheritdoc/>
    public override void Write(string? value)
    {
        if (string.IsNullOrEmpty(value))
        {
            return;
        }

        lock (_lock)
        {
            WipePassing();
            IsUntouched = false;
            Put(VisibleText.Of(value));
        }
    }

    /// <summary>That the stream is open.</summary>
    /// <exception cref="UnwritableException">It was closed before the program began.</exception>
    public void MustBeOpen()
    {
        if (_writer is null)
        {
            throw new UnwritableException(this, "it is closed");
        }
    }

    /// <summary>Shows words on the line at the foot of a terminal, until other words or other text take their place; elsewhere nothing.</summary>
    public void ShowPassing(string words)
    {
        lock (_lock)
        {
            if (_isTerminal && _writer is not null)
            {
                WipePassing();
                Put(words);
                _passing = words.Length;
            }
        }
    }

    /// <summary>Takes away what stands at the foot.</summary>
    public void EndPassing()
    {
        lock (_lock)
        {
            WipePassing();
        }
    }

    private void WipePassing()
    {
        if (_passing > 0)
        {
            Put("\r" + new string(' ', _passing) + "\r");
            _passing = 0;
        }
    }

    private void Put(string text)
    {
        MustBeOpen();
        try
        {
            _writer!.Write(text);
        }
        catch (IOException e) when (!Pipes.IsBroken(e))
        {
            throw new UnwritableException(this, e.Message.TrimEnd('.'));
        }
        catch (UnauthorizedAccessException)
        {
            throw new UnwritableException(this, "it is closed, or open for reading alone");
        }
    }

    // Never with a byte order mark.
    private static StandardStream Of(string name, int descriptor, Func<Stream> open, bool isRedirected)
    {
        var encoding = Console.OutputEncoding is UTF8Encoding ? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false) : Console.OutputEncoding;
        return new StandardStream(name, InheritedStream.IsOpen(descriptor) ? open() : null, encoding, !isRedirected);
    }
}
