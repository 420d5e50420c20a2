using FsCheck.Xunit;

namespace Revoicer.Tests;

/// <summary>
/// A law that random cases are held to. They are drawn anew on every run, and a failure prints its seed; where CI=true the
/// seed is fixed, so that a run says the same twice.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
#pragma warning disable xUnit3003 // FsCheck's own attribute, from which this one derives, takes no place in the source.
public sealed class LawAttribute : PropertyAttribute
#pragma warning restore xUnit3003
{
    private const string FixedSeed = "20260911,8642097531";

    /// <summary>A law under the seed that the run calls for.</summary>
    public LawAttribute()
    {
        if (Environment.GetEnvironmentVariable("CI") == "true")
        {
            Replay = FixedSeed;
        }
    }
}
