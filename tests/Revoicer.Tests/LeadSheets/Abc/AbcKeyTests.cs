using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

public class AbcKeyTests
{
    // Signature and modes with it, from C sharp major (7 sharps) down to C flat major: the table of section 3.1.14 of the
    // ABC standard 2.1.
    public static TheoryData<string, int> Signatures() => Table(
        "7 C# A#m G#Mix D#Dor E#Phr F#Lyd B#Loc",
        "6 F# D#m C#Mix G#Dor A#Phr BLyd E#Loc",
        "5 B G#m F#Mix C#Dor D#Phr ELyd A#Loc",
        "4 E C#m BMix F#Dor G#Phr ALyd D#Loc",
        "3 A F#m EMix BDor C#Phr DLyd G#Loc",
        "2 D Bm AMix EDor F#Phr GLyd C#Loc",
        "1 G Em DMix ADor BPhr CLyd F#Loc",
        "0 C Am GMix DDor EPhr FLyd BLoc",
        "-1 F Dm CMix GDor APhr BbLyd ELoc",
        "-2 Bb Gm FMix CDor DPhr EbLyd ALoc",
        "-3 Eb Cm BbMix FDor GPhr AbLyd DLoc",
        "-4 Ab Fm EbMix BbDor CPhr DbLyd GLoc",
        "-5 Db Bbm AbMix EbDor FPhr GbLyd CLoc",
        "-6 Gb Ebm DbMix AbDor BbPhr CbLyd FLoc",
        "-7 Cb Abm GbMix DbDor EbPhr FbLyd BbLoc");

    [Theory]
    [MemberData(nameof(Signatures))]
    public void Modes_have_their_signature(string key, int fifths) => Assert.Equal(fifths, FifthsOf(key));

    [Theory]
    [InlineData("D mix", 1)]
    [InlineData("D mixolydian", 1)]
    [InlineData("A minor", 0)]
    [InlineData("AMIN", 0)]
    [InlineData("Aaeo", 0)]
    [InlineData("G ionian", 1)]
    [InlineData("Bbmaj clef=treble", -2)]
    [InlineData("none", 0)]
    [InlineData("", 0)]
    [InlineData("HP", 2)]
    [InlineData("Hp", 2)]
    [InlineData("bass", 0)]
    public void Keys_are_written_in_many_ways(string key, int fifths) => Assert.Equal(fifths, FifthsOf(key));

    [Theory]
    [InlineData("D =c ^g", "C4, D4, E4, F#4, G#4, A4, B4")]
    [InlineData("D exp _b _e ^f", "C4, D4, Eb4, F#4, G4, A4, Bb4")]
    [InlineData("G ^^f", "C4, D4, E4, F##4, G4, A4, B4")]
    [InlineData("^c_b", "C#4, D4, E4, F4, G4, A4, Bb4")]
    public void Accidentals_are_added_to_a_key(string key, string expected) =>
        Assert.Equal(expected, AbcText.Heard(AbcText.Sheet($"X:1\nM:none\nL:1/4\nK:{key}\nCDEFGAB")).Replace(" 1", "", StringComparison.Ordinal));

    [Theory]
    [InlineData("D mix", "D mixolydian")]
    [InlineData("D dor", "D dorian")]
    [InlineData("Ebm", "Eb minor")]
    [InlineData("none", null)]
    [InlineData("Hp", null)]
    [InlineData("Db dor", "Db dorian")]
    public void A_key_is_told_by_its_name(string key, string? expected) =>
        Assert.Equal(expected, AbcText.Sheet($"X:1\nM:4/4\nK:{key}\nC8").Key?.ToString());

    [Theory]
    [InlineData("K:C clef=treble-8", "C3 4")]
    [InlineData("K:C treble+8", "C5 4")]
    [InlineData("K:C clef=bass", "C4 4")]
    [InlineData("K:C octave=-1", "C3 4")]
    [InlineData("K:C middle=d", "C4 4")]
    [InlineData("V:1 clef=treble-8\nK:C", "C3 4")]
    [InlineData("V:1 octave=1\nK:C octave=-1", "C5 4")]
    public void Clefs_and_octaves_move_the_notes(string head, string expected) =>
        Assert.Equal(expected, AbcText.Heard(AbcText.Sheet($"X:1\nM:4/4\nL:1/4\n{head}\nC4")));

    [Fact]
    public void A_key_changes_inside_a_tune()
    {
        var sheet = AbcText.Music("F4|[K:G]F4|F2[K:F]B2|B4|\nK:Bm\nF4|");

        Assert.Equal("F4 4, F#4 4, F#4 2, Bb4 2, Bb4 4, F#4 4", AbcText.Heard(sheet));
        Assert.Equal([null, "G major", null, "F major", "B minor"], sheet.Bars.Select(b => b.Key?.ToString()));
    }

    private static int FifthsOf(string key)
    {
        var sheet = AbcText.Sheet($"X:1\nM:none\nL:1/4\nK:{key}\nCDEFGAB");
        return sheet.Bars[0].Notes.Sum(n => n.Name.Alteration);
    }

    private static TheoryData<string, int> Table(params string[] rows)
    {
        var table = new TheoryData<string, int>();
        foreach (var words in rows.Select(row => row.Split(' ')))
        {
            foreach (var key in words.Skip(1))
            {
                table.Add(key, int.Parse(words[0]));
            }
        }

        return table;
    }
}
