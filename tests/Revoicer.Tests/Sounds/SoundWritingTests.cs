using FsCheck.Xunit;
using Revoicer.Sounds;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Sounds;

public sealed class SoundWritingTests
{
    [Law(MaxTest = 200)]
    public void What_is_written_is_read_back_as_the_same(int seed, string? name)
    {
        var random = new Random(seed);
        var text = $"name = \"a\"\n" + string.Concat(SoundWords.All.GroupBy(w => w.Part).Select(part =>
            $"[{part.Key}]\n" + string.Concat(part.Select(w => FormattableString.Invariant($"{w.Word} = {Number(random, w)}\n")))));
        var sound = Read(text) with { Name = WellFormed("x" + name) };

        Assert.Equal(sound, Read(SoundWriting.Text(sound, "What it is for.")));
    }

    [Theory]
    [InlineData("bright")]
    [InlineData("balanced")]
    [InlineData("full")]
    public void The_shipped_sounds_come_back_as_they_are(string name) =>
        Assert.Equal(ShippedSounds.Named(name), Read(SoundWriting.Text(ShippedSounds.Named(name), "")));

    [Fact]
    public void It_says_of_itself_what_it_is_told_to_on_one_line_and_of_every_word_what_it_means()
    {
        var text = SoundWriting.Text(ShippedSounds.Default with { Name = "the \"far\" one\\" }, "For\nthe quay.");

        Assert.Equal("For the quay.", LeadingComment.Of(text));
        Assert.Contains("\nname = \"the \\\"far\\\" one\\\\\"\n", text, StringComparison.Ordinal);
        Assert.All(SoundWords.All, w => Assert.Contains($" # {w.Unit}: {w.Meaning}\n", text, StringComparison.Ordinal));
        Assert.DoesNotContain('\r', text);
    }

    private static Sound Read(string text) => SoundFile.Read("own.toml", text) switch
    {
        Reading<Sound>.Accepted accepted => accepted.Value,
        Reading<Sound>.Refused refused => throw new InvalidOperationException(string.Concat(refused.Problems)),
        _ => throw new InvalidOperationException("no such reading"),
    };

    private static double Number(Random random, SoundWord word)
    {
        var number = word.Lowest + (random.NextDouble() * (word.Highest - word.Lowest));
        return word.Word is "rolls-in-phrase" or "approaches-in-phrase" ? Math.Floor(number) : random.Next(3) switch
        {
            0 => number,
            1 => Math.Round(number, 2),

            // Near nothing, so that exponents occur; only where that is in range.
            _ => Math.Max(word.Lowest, Math.Min(word.Highest, number * 1e-9)),
        };
    }

    // A name that a file can have is of one line and not too long, and holds no half of a pair.
    private static string WellFormed(string name) => new([.. name.Where(c => !char.IsSurrogate(c) && !char.IsControl(c)).Take(200)]);
}
