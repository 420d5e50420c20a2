using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.NoEmit;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Benchmarks;

/// <summary>
/// The price tables beside the plain double loop over all partials of both bells: of a tower of 56 bells, of one delay, and of
/// candidate pairs of a sheet.
/// </summary>
public class TableBenchmarks
{
    private const int CandidatePairs = 1_000_000;
    private const int Delays = 200;

    // The plain loop takes so long that a hundredth of the pairs must do.
    private const int PlainPairs = CandidatePairs / 100;

    private static readonly Seconds Delay = new(0.75);
    private static readonly Tower Tower = ShippedTowers.Named("great-56");

    private readonly double[] _table = new double[Tower.Bells.Count * Tower.Bells.Count];
    private readonly int[] _all = [];
    private readonly long[] _prices = [];
    private readonly TowerDoses _doses = new(Tower, Fade.Default);
    private readonly SheetPrices _sheet;
    private readonly Bell[][] _earlier;
    private readonly Bell[][] _later;

    public TableBenchmarks()
    {
        var sound = ShippedSounds.Default;
        var listed = ListedSheet.Of(SheetFiles.Read(SheetPath)!);
        _sheet = SheetPrices.Of(new Instrument(ShippedTowers.Default, sound), sound, listed.Plan, listed.Candidates, CancellationToken.None);
        (_earlier, _later) = (BellsOf(listed.Candidates[2]), BellsOf(listed.Candidates[3]));
        _all = [.. Enumerable.Range(0, _later.Length)];
        _prices = new long[_all.Length];
    }

    /// <summary>The sheet whose candidates are paired.</summary>
    internal static string SheetPath { get; private set; } = "";

    public static int Print(string sheet)
    {
        SheetPath = sheet;
        var config = ManualConfig.CreateEmpty()
            .AddJob(Job.Default.WithToolchain(InProcessNoEmitToolchain.DontLogOutput).WithStrategy(RunStrategy.Monitoring).WithWarmupCount(15).WithIterationCount(9))
            .AddColumnProvider(DefaultColumnProviders.Descriptor, DefaultColumnProviders.Statistics)
            .AddLogger(NullLogger.Instance);
        var summary = BenchmarkRunner.Run<TableBenchmarks>(config);
        var medians = summary.Reports.ToDictionary(r => r.BenchmarkCase.Descriptor.WorkloadMethod.Name, r => r.ResultStatistics!.Median);
        Console.WriteLine("| what | time | plain double loop | times as long |");
        Console.WriteLine("|---|---|---|---|");
        Row("tables of a tower of 56 bells", medians[nameof(TowerTables)]);
        Row("200 delays for all pairs of 56 bells", medians[nameof(DelayTable)], medians[nameof(DelayPlain)] * Delays);
        Row("1,000,000 candidate pairs", medians[nameof(Candidates)], medians[nameof(CandidatesPlain)] * CandidatePairs / PlainPairs);
        return 0;
    }

    [Benchmark]
    public TowerDoses TowerTables() => new(Tower, Fade.Default);

    [Benchmark]
    public double DelayTable()
    {
        for (var i = 0; i < Delays; i++)
        {
            _doses.Roughness(Delay + new Seconds(i * 1e-3), _table);
        }

        return _table[1];
    }

    [Benchmark]
    public double DelayPlain()
    {
        var sum = 0.0;
        foreach (var earlier in Tower.Bells)
        {
            foreach (var later in Tower.Bells)
            {
                sum += Plain(earlier, later, Delay.Value);
            }
        }

        return sum;
    }

    [Benchmark]
    public long Candidates()
    {
        var sum = 0L;
        for (var (done, earlier) = (0, 0); done < CandidatePairs; done += _all.Length, earlier = (earlier + 1) % _earlier.Length)
        {
            _sheet.PairPrices(2, earlier, 3, _all, _prices);
            sum += _prices[0];
        }

        return sum;
    }

    [Benchmark]
    public double CandidatesPlain()
    {
        var sum = 0.0;
        for (var (done, earlier) = (0, 0); done < PlainPairs; earlier = (earlier + 1) % _earlier.Length)
        {
            for (var later = 0; later < _later.Length && done < PlainPairs; later++, done++)
            {
                sum += Plain(_earlier[earlier], _later[later]);
            }
        }

        return sum;
    }

    private static Bell[][] BellsOf(Items<Candidate> candidates) =>
        [.. candidates.Select(c => c.Voicing.Notes.Select(n => ShippedTowers.Default.At(n)!).ToArray())];

    private static double Plain(Bell[] earlier, Bell[] later)
    {
        var sum = 0.0;
        foreach (var a in earlier)
        {
            foreach (var b in later)
            {
                sum += Plain(a, b, Delay.Value);
            }
        }

        return sum;
    }

    // D as docs/clash-model.md writes it down: every partial of one with every partial of the other.
    private static double Plain(Bell earlier, Bell later, double delay)
    {
        var sum = 0.0;
        foreach (var p in earlier == later ? [] : earlier.Partials)
        {
            foreach (var q in later.Partials)
            {
                var distance = Math.Abs(p.Frequency.Value - q.Frequency.Value)
                    / (1.72 * Math.Pow((p.Frequency.Value + q.Frequency.Value) / 2, 0.65));
                if (distance <= 1.2)
                {
                    var part = distance / 0.25 * Math.Exp(1 - (distance / 0.25));
                    var (kappaP, kappaQ) = (p.Kappa + Fade.Default.Rate, q.Kappa + Fade.Default.Rate);
                    sum += part * part * p.Amplitude * q.Amplitude * Math.Exp(-kappaP * delay) / (kappaP + kappaQ);
                }
            }
        }

        return sum;
    }

    private static void Row(string what, double nanoseconds, double? plain = null) => Console.WriteLine(plain is { } p
        ? FormattableString.Invariant($"| {what} | {nanoseconds / 1e6:0.0} ms | {p / 1e6:0} ms | {p / nanoseconds:0} |")
        : FormattableString.Invariant($"| {what} | {nanoseconds / 1e6:0.0} ms | | |"));
}
