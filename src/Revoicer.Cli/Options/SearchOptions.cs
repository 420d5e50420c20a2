using System.CommandLine;

namespace Revoicer.Cli.Options;

/// <summary>Options that commands which voice something have in common: how long to search, and what the tune may lose.</summary>
internal static class SearchOptions
{
    private const double ShortestLimit = 0.1;
    private const double LongestLimit = 86_400;

    /// <summary>Whether notes of the tune that a bell cannot repeat so soon are left out.</summary>
    public static Option<bool> EaseTune() => new("--ease-tune") { Description = "leave out notes of the tune that come sooner than their bell recovers" };

    /// <summary>Whether to take as long as a proof needs.</summary>
    public static Option<bool> Prove() => new("--prove") { Description = "take as long as it needs to show that nothing cheaper exists; by default some seconds at most" };

    /// <summary>After so many seconds the best found so far is taken; null where it is left out.</summary>
    public static Option<double?> TimeLimit() => new("--time-limit")
    {
        HelpName = "SECONDS",
        Description = "after so many seconds take the best found so far; the result then depends on the machine",
        CustomParser = result => Numbers.Within(result, "--time-limit", "time limit", ShortestLimit, LongestLimit, " seconds"),
    };
}
