using Revoicer.Values;

namespace Revoicer.Text;

/// <summary>What is told of many problems of one file: as many as anyone reads.</summary>
internal static class FirstProblems
{
    /// <summary>So many are told.</summary>
    public const int Most = 100;

    /// <summary>The first ones in the order of the file; where there are more, that is told at the next.</summary>
    public static Items<Problem> Of(IEnumerable<Problem> problems)
    {
        var ordered = problems.OrderBy(p => p.Where.Line).ThenBy(p => p.Where.Column).ToList();
        if (ordered.Count > Most)
        {
            var more = new Problem(ordered[Most].Where, "more such places follow", "the ones above put right first");
            ordered = [.. ordered.Take(Most), more];
        }

        return ordered.ToItems();
    }
}
