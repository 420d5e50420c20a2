namespace Revoicer.Values;

/// <summary>
/// The time by which an answer is wanted, by the caller's clock; or never. What has an answer by then takes it as it is; what
/// has none stops.
/// </summary>
public sealed class Deadline : IDisposable
{
    private readonly TimeProvider? _clock;
    private readonly TimeSpan _limit;
    private readonly long _began;
    private readonly CancellationTokenSource? _passing;

    private Deadline()
    {
    }

    private Deadline(TimeProvider clock, TimeSpan limit)
    {
        (_clock, _limit, _began) = (clock, limit, clock.GetTimestamp());
        _passing = new CancellationTokenSource(limit, clock);
        Token = _passing.Token;
    }

    /// <summary>No deadline.</summary>
    public static Deadline None { get; } = new();

    /// <summary>Whether there is none.</summary>
    public bool IsNone => _clock is null;

    /// <summary>Cancelled once it has passed, for work that waits on tokens.</summary>
    public CancellationToken Token { get; }

    /// <summary>Whether it has passed. The clock is asked itself, as timers are late where all cores are at work.</summary>
    public bool HasPassed
    {
        get
        {
            if (_passing is null || _passing.IsCancellationRequested)
            {
                return _passing is not null;
            }

            if (_clock!.GetElapsedTime(_began) < _limit)
            {
                return false;
            }

            _passing.Cancel();
            return true;
        }
    }

    /// <summary>A deadline so long from now.</summary>
    /// <param name="clock">The clock.</param>
    /// <param name="limit">How long; more than 0.</param>
    public static Deadline After(TimeProvider clock, Seconds limit) => new(clock, TimeSpan.FromSeconds(limit.Value));

    /// <summary>One that passes when a part of what is left from now on is over; none where this one is none.</summary>
    /// <param name="share">The part, 0..1.</param>
    public Deadline Part(double share) => _clock is null
        ? None
        : new Deadline(_clock, TimeSpan.FromTicks(Math.Max(0, (long)(share * (_limit - _clock.GetElapsedTime(_began)).Ticks))));

    /// <summary>A token that is cancelled by this deadline as well as by another token; to be disposed of.</summary>
    public CancellationTokenSource With(CancellationToken cancel) => CancellationTokenSource.CreateLinkedTokenSource(Token, cancel);

    /// <inheritdoc/>
    public void Dispose() => _passing?.Dispose();
}
