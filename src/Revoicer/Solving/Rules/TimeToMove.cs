namespace Revoicer.Solving.Rules;

/// <summary>
/// From one chord to the next every limb has the time that its move takes and every bell that of its recovery. The prices
/// of pairs hold it; it stands here to be named where it is what makes wishes impossible.
/// </summary>
public sealed class TimeToMove : Rule
{
    /// <inheritdoc/>
    public override string Words => "hands and feet have time to move from chord to chord, and bells to recover";
}
