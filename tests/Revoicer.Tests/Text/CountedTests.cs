using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Text;

public class CountedTests
{
    [Fact]
    public void Equal_sentences_stand_once_with_their_count_where_the_first_stood() => Assert.Equal(
        ["ebb (3 times)", "flood"],
        Counted.Of(["ebb", "flood", "ebb", "ebb"]));

    [Fact]
    public void The_count_stands_at_the_end_of_the_first_line() => Assert.Equal(
        ["quay: fog (2 times)\n    line\n"],
        Counted.Of(["quay: fog\n    line\n", "quay: fog\n    line\n"]));
}
