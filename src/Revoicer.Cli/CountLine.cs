namespace Revoicer.Cli;

/// <summary>Says on a progress line how many of several things are done.</summary>
internal sealed class CountLine : IProgress<int>
{
    private readonly ProgressLine _line;
    private readonly int _all;
    private readonly string _what;

    /// <summary>Begins with none done.</summary>
    /// <param name="line">Where it is said.</param>
    /// <param name="all">How many there are.</param>
    /// <param name="what">What they are: "drafts".</param>
    public CountLine(ProgressLine line, int all, string what)
    {
        (_line, _all, _what) = (line, all, what);
        Report(0);
    }

    /// <inheritdoc/>
    public void Report(int value) => _line.Say($"{value} of {_all} {_what} done ...");
}
