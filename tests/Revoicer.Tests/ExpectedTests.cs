using Xunit;

namespace Revoicer.Tests;

public class ExpectedTests
{
    [Fact]
    public void A_difference_fails_with_its_first_line_and_leaves_the_text_beside_the_file()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "lights.txt"), "one\ntwo\n");
            var failure = Assert.ThrowsAny<Exception>(() => Expected.Text(folder, "lights", "one\nthree\n"));
            Assert.Contains("line 2\nexpected: two\nreceived: three", failure.Message);
            Assert.Equal("one\nthree\n", File.ReadAllText(Path.Combine(folder, "lights.received.txt")));

            Expected.Text(folder, "lights", "one\ntwo\n");
            Assert.False(File.Exists(Path.Combine(folder, "lights.received.txt")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
