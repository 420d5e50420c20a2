using System.Diagnostics;

namespace Revoicer.Benchmarks;

/// <summary>Adds up what each stage of a draft takes, in milliseconds.</summary>
internal sealed class StageTimes : IProgress<Stage>
{
    private readonly Dictionary<Stage, double> _milliseconds = [];
    private Stage? _open;
    private long _since;

    public double Of(Stage stage) => _milliseconds.GetValueOrDefault(stage);

    public void Report(Stage stage)
    {
        Stop();
        _open = stage;
        _since = Stopwatch.GetTimestamp();
    }

    public void Stop()
    {
        if (_open is { } stage)
        {
            _milliseconds[stage] = Of(stage) + Stopwatch.GetElapsedTime(_since).TotalMilliseconds;
        }

        _open = null;
    }
}
