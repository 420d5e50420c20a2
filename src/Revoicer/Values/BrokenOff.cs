namespace Revoicer.Values;

/// <summary>
/// Tells work that was stopped from work that failed. Several cores may say at once that they were stopped, each of its own of
/// several linked tokens; the framework then throws them all together as one <see cref="AggregateException"/>.
/// </summary>
public static class BrokenOff
{
    /// <summary>Whether an exception says that the work was stopped, and nothing else.</summary>
    public static bool Is(Exception exception) => exception is OperationCanceledException
        || (exception is AggregateException several && several.Flatten().InnerExceptions.All(e => e is OperationCanceledException));
}
