using System.Runtime.InteropServices;

namespace Revoicer.Cli.Streams;

/// <summary>Ctrl+C, or a request of the system to end, as a cancellation.</summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource _source = new();
    private readonly PosixSignalRegistration[] _signals;

    public Interruption()
    {
        _signals = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM }.Select(signal => PosixSignalRegistration.Create(signal, Interrupt))];
    }

    /// <summary>Cancelled by the first such signal.</summary>
    public CancellationToken Token => _source.Token;

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var signal in _signals)
        {
            signal.Dispose();
        }

        _source.Dispose();
    }

    private void Interrupt(PosixSignalContext context)
    {
        context.Cancel = true;
        _source.Cancel();
    }
}
