using Revoicer.Bells;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.Text;

public class FirstProblemsTests
{
    private static readonly string ManyUnknownWords = string.Concat(Enumerable.Range(1, 300).Select(i => $"ebb{i} = {i}\n"));

    [Fact]
    public void A_tower_file_tells_a_hundred() => HasHundred(Problems(TowerFile.Read("quay.toml", ManyUnknownWords)));

    [Fact]
    public void A_sound_file_tells_a_hundred() => HasHundred(Problems(SoundFile.Read("quay.toml", ManyUnknownWords)));

    [Fact]
    public void A_wishes_file_tells_a_hundred() => HasHundred(Problems(WishFile.Read("quay.toml", ManyUnknownWords, [])));

    [Fact]
    public void A_text_that_is_no_toml_at_all_tells_a_hundred() =>
        HasHundred(Problems(WishFile.Read("quay.toml", string.Concat(Enumerable.Repeat("ebb =\n", 300)), [])));

    [Fact]
    public void Up_to_a_hundred_all_are_told()
    {
        var words = string.Concat(Enumerable.Range(1, 100).Select(i => $"ebb{i} = {i}\n"));
        Assert.Equal(Enumerable.Range(1, 100), Problems(WishFile.Read("quay.toml", words, [])).Select(p => p.Where.Line));
    }

    private static void HasHundred(Items<Problem> problems)
    {
        Assert.Equal(101, problems.Count);
        Assert.Equal("more such places follow", problems[^1].Found);
        Assert.DoesNotContain(problems.Take(100), p => p.Found == problems[^1].Found);
    }

    private static Items<Problem> Problems<T>(Reading<T> reading) => Assert.IsType<Reading<T>.Refused>(reading).Problems;
}
