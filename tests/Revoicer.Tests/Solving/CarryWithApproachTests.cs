using Revoicer.Solving.Rules;
using Revoicer.Tests.Voicings;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Solving;

/// <summary>A tone that leads into the next bass is of no use without that bass, so no rule on its own chord may force it.</summary>
public sealed class CarryWithApproachTests
{
    private static readonly double[] Carries = [1, 2, 3];

    [Theory]
    [InlineData(9, "1 2")]
    [InlineData(2, "1 2")]
    [InlineData(1.5, "1 2")]
    [InlineData(0, "0 1 2")]
    public void What_carries_farthest_by_such_a_tone_is_allowed_and_not_forced(double least, string left)
    {
        var slot = Sheets.Plan("4/4", 60, "| C | F |").Slots[0];
        var kept = new CarryAtLeast(new Decibels(least)).Left(slot, [0, 1, 2], c => new Decibels(Carries[c]), c => c == 2);
        Assert.Equal(left, string.Join(' ', kept));
    }
}
