using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Tests.Chords;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>
/// The suffixes on which the open libraries tonal (MIT), music21 (BSD-3), pychord (MIT) and chord-symbol (MIT) agree:
/// Published/chord-suffixes-unanimous.tsv.
/// </summary>
public class ChordSuffixTests
{
    // Twelve roots, then their enharmonic spellings; Unicode signs as well as ASCII ones.
    private static readonly (string Written, int PitchClass)[] Roots =
    [
        ("C", 0), ("Db", 1), ("D", 2), ("Eb", 3), ("E", 4), ("F", 5), ("Gb", 6), ("G", 7), ("Ab", 8), ("A", 9), ("Bb", 10), ("B", 11),
        ("C#", 1), ("D#", 3), ("F#", 6), ("G#", 8), ("A#", 10), ("E#", 5), ("B#", 0), ("Cb", 11), ("Fb", 4),
        ("Bbb", 9), ("F##", 7), ("Cx", 2), ("E\u266D", 3), ("F\u266F", 6), ("B\uD834\uDD2B", 9), ("G\uD834\uDD2A", 9),
    ];

    public static TheoryData<string> Suffixes => [.. Rows().Select(r => r[0])];

    [Fact]
    public void The_table_has_all_211_rows() => Assert.Equal(211, Rows().Count);

    [Theory]
    [MemberData(nameof(Suffixes))]
    public void Every_root_has_the_degrees_and_the_sound_on_which_the_libraries_agree(string suffix)
    {
        var row = Rows().Single(r => r[0] == suffix);
        var columns = row[1..5].Where(c => c.Length > 0).ToArray();
        var sound = row[5].Split(',').Select(int.Parse).ToArray();
        foreach (var (written, pitchClass) in Roots)
        {
            var chord = SymbolText.Chord(written + suffix);
            Assert.Equal(suffix, chord.Suffix);
            Assert.Equal(pitchClass, chord.Root.PitchClass.Value);
            Assert.Contains(Folded(chord.Tones.Select(t => t.Degree.ToString())), columns.Select(c => Folded(c.Split(' '))));
            Assert.Equal(
                PitchClassSet.Of(sound.Select(s => PitchClass.Of(s + pitchClass))),
                chord.PitchClasses);
        }
    }

    // A sixth added above a seventh lies an octave higher, and the table says so where the libraries do.
    [Theory]
    [InlineData("add6", "1 3 5 6")]
    [InlineData("7add6", "1 3 5 b7 13")]
    public void An_added_sixth_is_the_degree_that_the_table_prints(string suffix, string degrees)
    {
        Assert.Contains(degrees, Rows().Single(r => r[0] == suffix)[1..5]);
        Assert.Equal(degrees, string.Join(' ', SymbolText.Chord("C" + suffix).Tones.Select(t => t.Degree.ToString())));
    }

    // 2 and 9, 4 and 11, 6 and 13 are one tone to the libraries, in one octave or another.
    private static string Folded(IEnumerable<string> degrees) => string.Join(' ', degrees
        .Select(d => d.Replace("13", "6", StringComparison.Ordinal).Replace("11", "4", StringComparison.Ordinal).Replace("9", "2", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal));

    private static List<string[]> Rows() => [.. PublishedTable.Rows("chord-suffixes-unanimous.tsv")];
}
