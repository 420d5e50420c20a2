using Revoicer.Cli.Comparisons;
using Revoicer.Pictures;
using Xunit;

namespace Revoicer.Cli.Tests.Comparisons;

public sealed class ComparedPicturesTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 F | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task What_is_compared_is_drawn_each_picture_as_SVG_and_PNG()
    {
        var ran = await Draw("--keys", "0..1", "--sound", "full", "--bar", "2");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        string[] pictures = ["drawn-clash", "drawn-keys", "drawn-bar-2-beat-1", "drawn-bar-2-beat-3"];
        Assert.Equal(pictures.SelectMany(p => new[] { p + ".svg", p + ".png" }).Append("buoys.chords").Order(StringComparer.Ordinal), _scratch.Names());
        Assert.Contains($"wrote {_scratch.At("drawn-clash.svg")}\nwrote {_scratch.At("drawn-clash.png")}\nwrote {_scratch.At("drawn-keys.svg")}\n", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith($"{_scratch.At("drawn-bar-2-beat-3")}: 1 of 2 drafts is drawn: of several keys those recommended, then the written one; name fewer to see others\n", ran.Output, StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(_scratch.At("drawn-keys.png"))[..4]);
        Assert.StartsWith("<svg ", File.ReadAllText(_scratch.At("drawn-keys.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pictures_that_exist_are_not_replaced_unless_asked()
    {
        File.WriteAllText(_scratch.At("drawn-clash.png"), "mine");
        var ran = await Draw();
        Assert.Equal(3, ran.ExitCode);
        Assert.Contains("drawn-clash.png exists already; --force replaces it", ran.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(_scratch.At("drawn-clash.svg")));
        Assert.Equal(0, (await Draw("--force")).ExitCode);
        Assert.NotEqual("mine", File.ReadAllText(_scratch.At("drawn-clash.png")));
    }

    [Fact]
    public async Task What_a_program_reads_stands_alone_on_the_standard_output()
    {
        var ran = await Draw("--json");
        Assert.Equal(0, ran.ExitCode);
        Assert.StartsWith("{", ran.Output, StringComparison.Ordinal);
        Assert.EndsWith("}\n", ran.Output, StringComparison.Ordinal);
        Assert.StartsWith("wrote ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_without_a_font_is_told_so_and_nothing_is_written()
    {
        using var error = new StringWriter { NewLine = "\n" };
        Assert.Null(ComparedPictures.Files([new("-clash", new Drawing.NoFont("no font is installed; install one"), null)], "drawn", error));
        Assert.Equal("revoicer: no font is installed; install one\n", error.ToString());
    }

    private async Task<Ran> Draw(params string[] options)
    {
        var ran = await Ran.Of(["compare", _scratch.Put("buoys.chords", Sheet), "--pictures", "--out", _scratch.At("drawn"), .. options]);
        Assert.SkipWhen(ran.Error.Contains("cannot be lettered", StringComparison.Ordinal), "no font is installed that the pictures can be lettered with");
        return ran;
    }
}
