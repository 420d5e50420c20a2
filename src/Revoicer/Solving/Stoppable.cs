using Google.OrTools.Sat;

namespace Revoicer.Solving;

/// <summary>The constraint solver, stopped by a token.</summary>
internal static class Stoppable
{
    /// <summary>Solves a model; where it is stopped the status is that of what is known by then.</summary>
    /// <exception cref="OperationCanceledException">The token is cancelled before it begins.</exception>
    public static CpSolverStatus Solve(CpSolver solver, CpModel model, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        using var hasEnded = new ManualResetEventSlim();

        // Asked again until it has ended: before the solver has taken the model over it hears nothing.
        using var stopping = cancel.Register(() =>
        {
            do
            {
                solver.StopSearch();
            }
            while (!hasEnded.Wait(TimeSpan.FromMilliseconds(10)));
        });
        try
        {
            return solver.Solve(model);
        }
        finally
        {
            hasEnded.Set();
        }
    }
}
