using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Values;

/// <summary>Lists that are values.</summary>
public sealed class ItemsTests
{
    [Fact]
    public void Lists_are_equal_by_their_elements_whichever_way_one_asks()
    {
        Items<int> one = [1, 2];
        Items<int> same = [1, 2];
        Items<int> turned = [2, 1];
        Assert.True(one == same && one.Equals(same) && one.GetHashCode() == same.GetHashCode());
        Assert.True(one != turned && !one.Equals(turned));
        Assert.True(one != null && !(one == null));
    }
}
