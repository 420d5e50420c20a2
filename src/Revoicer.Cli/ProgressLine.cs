using Revoicer.Audits;
using Revoicer.Cli.Streams;

namespace Revoicer.Cli;

/// <summary>
/// One line at the foot of a terminal that says what is being done, once it has taken more than a second; nothing where
/// the error stream is no terminal.
/// </summary>
internal sealed class ProgressLine : IProgress<Stage>, IProgress<AuditStage>, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly Lock _lock = new();
    private readonly StandardStream? _terminal;
    private readonly Timer? _timer;
    private string _text = "";
    private bool _isOver;

    public ProgressLine(TextWriter error)
    {
        if (error is StandardStream { IsTerminal: true } terminal)
        {
            _terminal = terminal;
            _timer = new Timer(_ => Show(), null, Patience, Patience);
        }
    }

    /// <inheritdoc/>
    public void Report(Stage stage) => Say(Words(stage));

    /// <inheritdoc/>
    public void Report(AuditStage stage) => Say(stage switch
    {
        AuditStage.Tables => "listening to the bells ...",
        AuditStage.Limbs => "looking for hands and feet ...",
        AuditStage.Clash => "adding up the clash ...",
        AuditStage.Limits => "holding it against the limits ...",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "no such stage"),
    });

    /// <summary>What is being done, in a few words.</summary>
    public void Say(string text)
    {
        lock (_lock)
        {
            _text = text;
        }
    }

    /// <summary>Takes the line away, so that what follows stands on a clean one.</summary>
    public void Clear()
    {
        lock (_lock)
        {
            _isOver = true;
            _terminal?.EndPassing();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Clear();
        _timer?.Dispose();
    }

    // A terminal that has gone away is no reason to stop: what cannot be said to it in earnest will tell.
    private void Show()
    {
        try
        {
            lock (_lock)
            {
                if (!_isOver)
                {
                    _terminal!.ShowPassing(_text);
                }
            }
        }
        catch (UnwritableException)
        {
            _isOver = true;
        }
    }

    private static string Words(Stage stage) => stage switch
    {
        Stage.Slots => "reading the bars ...",
        Stage.Tables => "listening to the bells ...",
        Stage.Candidates => "listing what can be played ...",
        Stage.Prices => "pricing it ...",
        Stage.Search => "searching the cheapest ...",
        Stage.Reasons => "working out the reasons ...",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "no such stage"),
    };
}
