using Revoicer.Values;

namespace Revoicer.Solving;

/// <summary>How much a search may spend on showing how good its answer is; counted in work, so that every machine comes to the same end.</summary>
/// <param name="MostBranches">After so many branches the search among what is left is given up.</param>
/// <param name="MostCells">Prices of pairs that may be laid out in tables, of four bytes each.</param>
/// <param name="SolverTime">What the constraint solver may then spend on what is left, in its own unit, very roughly a second; 0 to leave it out.</param>
public sealed record ProofEffort(long MostBranches, long MostCells, double SolverTime)
{
    /// <summary>When it has passed the search takes the best it has found; the end then depends on the machine.</summary>
    public Deadline Deadline { get; init; } = Deadline.None;

    /// <summary>Nothing is shown.</summary>
    internal static ProofEffort Unproven { get; } = new(0, 0, 0);

    /// <summary>Some seconds at most, and half a gigabyte. Estimates.</summary>
    public static ProofEffort Quick { get; } = new(500, 100_000_000, 0);

    /// <summary>As long as it takes, within what a large machine has. Estimates.</summary>
    public static ProofEffort Thorough { get; } = new(50_000, 1_000_000_000, 600);
}
