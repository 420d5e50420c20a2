namespace Revoicer.Smf;

/// <summary>Some bytes of a file.</summary>
/// <param name="From">The first of them, counted from the start of the file.</param>
/// <param name="To">The byte behind the last.</param>
internal readonly record struct ByteRange(int From, int To)
{
    /// <summary>How many there are.</summary>
    public int Length => To - From;
}
