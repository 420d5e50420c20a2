namespace Revoicer.Cli.Files;

/// <summary>How writing a set of files ended.</summary>
internal abstract record WriteResult
{
    private WriteResult()
    {
    }

    /// <summary>All files are there, whole.</summary>
    public sealed record Written : WriteResult;

    /// <summary>None was written; what stood there before stands there still.</summary>
    /// <param name="Sentences">Why, and what helps; at least one.</param>
    public sealed record Failed(IReadOnlyList<string> Sentences) : WriteResult;
}
