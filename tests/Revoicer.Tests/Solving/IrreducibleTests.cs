using Revoicer.Solving;
using Xunit;

namespace Revoicer.Tests.Solving;

public sealed class IrreducibleTests
{
    [Law]
    public void What_is_left_is_impossible_and_nothing_of_it_can_be_left_out(int seed)
    {
        // Some sets are at odds; whatever holds one of them is impossible.
        var random = new Random(seed);
        var all = Enumerable.Range(0, random.Next(1, 30)).ToArray();
        var atOdds = Enumerable.Range(0, random.Next(1, 5))
            .Select(_ => all.Where(_ => random.Next(4) == 0).Append(random.Next(all.Length)).ToHashSet())
            .ToArray();
        bool IsImpossible(IReadOnlyList<int> some) => atOdds.Any(set => set.IsSubsetOf(some));

        var left = Irreducible.Of(all, IsImpossible);

        Assert.True(IsImpossible(left));
        Assert.All(left, one => Assert.False(IsImpossible([.. left.Where(other => other != one)])));
    }

    // A wish may lift a rule of the program and so make something possible again.
    [Law]
    public void It_holds_too_where_more_can_be_possible_again(int seed)
    {
        var random = new Random(seed);
        var all = Enumerable.Range(0, random.Next(1, 8)).ToArray();
        var impossible = Enumerable.Range(0, 1 << all.Length).Select(_ => random.Next(2) == 0).ToArray();
        impossible[^1] = true;
        bool IsImpossible(IReadOnlyList<int> some) => impossible[some.Sum(one => 1 << one)];

        var left = Irreducible.Of(all, IsImpossible);

        Assert.True(IsImpossible(left));
        Assert.All(left, one => Assert.False(IsImpossible([.. left.Where(other => other != one)])));
    }
}
