using System.Text;
using FsCheck.Xunit;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Text;
using Xunit;
using static Revoicer.Tests.LeadSheets.MusicXml.Score;

namespace Revoicer.Tests.LeadSheets.MusicXml;

/// <summary>Broken and hostile files end in a sentence.</summary>
public sealed class MusicXmlHostileTests
{
    private static readonly string Good = Of(Attributes + Chord("C", "dominant", Degree(9, -1, "add")) + Note("C5", 4) + Note("D5", 4), Chord("F") + Note("E5"));

    [Fact]
    public void Entities_are_not_resolved_and_nothing_is_fetched()
    {
        const string bomb = "<!DOCTYPE score-partwise [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c SYSTEM \"file:///etc/hostname\">]>";
        foreach (var entity in new[] { "&b;", "&c;" })
        {
            var problem = Problem(Good.Replace("?>\n", "?>\n" + bomb, StringComparison.Ordinal).Replace("<part-name>Tune", "<part-name>" + entity, StringComparison.Ordinal));
            Assert.Contains("undeclared entity", problem.Found, StringComparison.Ordinal);
            Assert.True(problem.Where is { Line: > 0, Column: > 0 }, problem.ToString());
        }

        // A document type without its entities being used is passed over.
        Assert.Empty(Accepted(Good.Replace("?>\n", "?>\n" + bomb, StringComparison.Ordinal)).Warnings);
    }

    [Fact]
    public void An_archive_that_grows_without_bound_is_refused()
    {
        var zeros = new byte[64 * 1024 * 1024];
        Assert.Contains("more than 8388608 bytes", Problem(Zip(("tune.xml", zeros))).Found, StringComparison.Ordinal);

        // The same, its size in the directory told as ten bytes (ZIP application note, 4.4.9; from memory).
        var lying = Zip(("tune.xml", zeros));
        var directory = lying.AsSpan().LastIndexOf("PK\u0001\u0002"u8);
        BitConverter.TryWriteBytes(lying.AsSpan(directory + 24), 10);
        Assert.NotEmpty(Problem(lying).Found);
    }

    [Fact]
    public void Every_beginning_of_a_file_is_refused_with_line_and_column()
    {
        var bytes = Encoding.UTF8.GetBytes(Good.TrimEnd());
        for (var length = 0; length < bytes.Length; length++)
        {
            var problem = Problem(bytes[..length]);
            Assert.True(problem.Where is { Line: > 0, Column: > 0 }, problem.ToString());
        }

        var zip = Zip(("tune.xml", bytes));
        for (var length = 2; length < zip.Length; length++)
        {
            Assert.NotEmpty(Problem(zip[..length]).Found);
        }
    }

    [Law(MaxTest = 2000)]
    public void Any_byte_changed_is_read_or_refused(uint at, byte what)
    {
        var bytes = Encoding.UTF8.GetBytes(Good);
        bytes[at % bytes.Length] = what;
        if (MusicXmlReader.Read("quay.xml", bytes) is Reading<LeadSheet>.Refused refused)
        {
            Assert.NotEmpty(refused.Problems);
        }
    }

    [Law(MaxTest = 500)]
    public void Any_byte_of_an_archive_changed_is_read_or_refused(uint at, byte what)
    {
        var bytes = Zip(("META-INF/container.xml", "<container><rootfiles><rootfile full-path=\"tune.xml\"/></rootfiles></container>"u8.ToArray()), ("tune.xml", Encoding.UTF8.GetBytes(Good)));
        bytes[at % bytes.Length] = what;
        if (MusicXmlReader.Read("quay.mxl", bytes) is Reading<LeadSheet>.Refused refused)
        {
            Assert.NotEmpty(refused.Problems);
        }
    }

    [Law(MaxTest = 1000)]
    public void Any_number_changed_is_read_or_refused(uint which, int number)
    {
        string[] values = [$"{number}", "0", "-1", "999999999", "0.000001", "1e9", "1000000", "99999999999999", "", "7", "9973", "NaN"];
        var numbers = System.Text.RegularExpressions.Regex.Matches(Good, "(?<=>)[0-9]+(?=<)");
        var changed = numbers[(int)(which % numbers.Count)];
        var text = Good[..changed.Index] + values[Math.Abs((long)number) % values.Length] + Good[(changed.Index + changed.Length)..];
        if (MusicXmlReader.Read("quay.xml", Encoding.UTF8.GetBytes(text)) is Reading<LeadSheet>.Refused refused)
        {
            Assert.All(refused.Problems, p => Assert.True(p.Where.Line > 0, p.ToString()));
        }
    }

    [Fact]
    public void Deep_long_and_wide_files_end_in_a_sentence()
    {
        Assert.Contains("more than 64 deep", Problem("<score-partwise><part><measure><attributes><key><fifths>" + string.Concat(Enumerable.Repeat("<a>", 100_000))).Found, StringComparison.Ordinal);
        Assert.Contains("30000 measures", Problem(Of([.. Enumerable.Repeat(Attributes, 30_000)])).Found, StringComparison.Ordinal);
        Assert.Equal("more bars than one sheet may have", Problem(Of([.. Enumerable.Repeat(Attributes + Note("C5"), 300), "<barline location=\"right\"><repeat direction=\"backward\" times=\"99\"/></barline>"])).Found);
        Assert.Equal("the score has no music", Problem("<score-partwise/>").Found);
        Assert.Equal("'html' is no score", Problem("<html/>").Found);
        var wide = string.Concat(Enumerable.Repeat(Chord("C", "dominant") + Note("C5", 1), 20_000));
        Assert.Equal("a bar of more than 1000 quarters", Problem(Of(Attributes + wide)).Found);
        Assert.Equal("notes that fall on no common grid", Problem(Of(Attributes.Replace(">2</div", ">9973</div", StringComparison.Ordinal) + Note("C5"), Attributes.Replace(">2</div", ">9967</div", StringComparison.Ordinal) + Note("C5"))).Found.Replace("bars", "notes", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("<note><pitch><step>C</step><octave>5</octave></pitch></note>", "a note that has no length that can be read")]
    [InlineData("<note><pitch><step>H</step><octave>5</octave></pitch><duration>2</duration></note>", "a pitch that cannot be read")]
    [InlineData("<note><pitch><step>C</step><alter>0.5</alter><octave>5</octave></pitch><duration>2</duration></note>", "an alteration of 0.5 semitones")]
    [InlineData("<note><pitch><step>G</step><octave>10</octave></pitch><duration>2</duration></note>", "a note outside the range of MIDI")]
    [InlineData("<backup/>", "a backup without a duration")]
    [InlineData("<attributes><divisions>0</divisions></attributes>", "'0' are no divisions of a quarter")]
    [InlineData("<attributes><time><beats>0</beats><beat-type>4</beat-type></time></attributes>", "a time signature that cannot be read")]
    [InlineData("<attributes><key><fifths>x</fifths></key></attributes>", "'x' is no key signature")]
    [InlineData("<harmony><root><root-step>C</root-step></root><kind>major</kind><degree><degree-value>99</degree-value></degree></harmony>", "a degree that cannot be read")]
    [InlineData("<barline><repeat direction=\"backward\" times=\"1000\"/></barline>", "a repeat of '1000' times")]
    public void What_cannot_be_read_is_told_with_its_place(string element, string found)
    {
        var problem = Problem(Of(Attributes + element + Note("C5")));
        Assert.Equal(found, problem.Found);
        Assert.True(problem.Where is { Line: > 0, Column: > 0 }, problem.ToString());
    }
}
