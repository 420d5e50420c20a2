namespace Revoicer.Cli.Streams;

/// <summary>A standard stream could not be written to.</summary>
/// <param name="stream">The stream.</param>
/// <param name="why">Why, as a clause.</param>
internal sealed class UnwritableException(StandardStream stream, string why) : Exception($"{stream.Name}: {why}")
{
    /// <summary>The stream.</summary>
    public StandardStream Stream => stream;

    /// <summary>What to tell the player.</summary>
    public string Sentence => $"revoicer: the {stream.Name} could not be written to: {why}; lead it to a terminal, or to a file with room (files that this run has written are whole)";
}
