using Google.OrTools.Sat;
using Revoicer.Solving;
using Xunit;

namespace Revoicer.Tests.Solving;

public class StoppableTests
{
    // Much more than it takes to begin, in the solver's own unit of work; where nothing stops it the search ends there.
    private const double Longest = 50;

    // So many pigeons in one hole fewer: hard to refute by resolution (Haken, The Intractability of Resolution, 1985).
    private const int Pigeons = 14;

    [Fact]
    public async Task A_search_that_has_begun_is_stopped_by_the_token()
    {
        using var stop = new CancellationTokenSource();
        var cancelled = Task.CompletedTask;
        using var solver = new CpSolver
        {
            StringParameters = $"num_workers:1,symmetry_level:0,cp_model_presolve:false,max_deterministic_time:{Longest},log_search_progress:true,log_to_stdout:false",
        };
        solver.SetLogCallback(line => cancelled = line.Contains("Starting search", StringComparison.Ordinal) ? Task.Run(stop.Cancel) : cancelled);
        var status = Stoppable.Solve(solver, Holes(), stop.Token);
        await cancelled;

        Assert.True(stop.IsCancellationRequested);
        Assert.Equal(CpSolverStatus.Unknown, status);
        Assert.InRange(solver.Response!.DeterministicTime, 0, Longest / 2);
    }

    [Fact]
    public void A_token_that_is_cancelled_before_lets_nothing_begin() =>
        Assert.Throws<OperationCanceledException>(() => Stoppable.Solve(new CpSolver(), Holes(), new CancellationToken(canceled: true)));

    private static CpModel Holes()
    {
        var model = new CpModel();
        BoolVar[][] sits = [.. Enumerable.Range(0, Pigeons).Select(p => Enumerable.Range(0, Pigeons - 1).Select(h => model.NewBoolVar($"pigeon {p} hole {h}")).ToArray())];
        foreach (var pigeon in sits)
        {
            model.AddBoolOr(pigeon);
        }

        for (var hole = 0; hole < Pigeons - 1; hole++)
        {
            for (var a = 0; a < Pigeons; a++)
            {
                for (var b = 0; b < a; b++)
                {
                    model.AddBoolOr([sits[a][hole].Not(), sits[b][hole].Not()]);
                }
            }
        }

        return model;
    }
}
