using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Chords;

public class ChordSymbolReaderTests
{
    [Theory]
    [InlineData("Eb", "Eb G Bb")]
    [InlineData("D#", "D# F## A#")]
    [InlineData("F#7", "F# A# C# E")]
    [InlineData("Gb7", "Gb Bb Db Fb")]
    [InlineData("Bbm7b5", "Bb Db Fb Ab")]
    [InlineData("Bdim7", "B D F Ab")]
    [InlineData("C#dim7", "C# E G Bb")]
    [InlineData("Fx", "F## A## C##")]
    public void Spelling_follows_from_root_and_degree(string symbol, string tones) =>
        Assert.Equal(tones, SymbolText.Tones(symbol));

    [Theory]
    [InlineData("C6/9/E", "1 3 5 6 9", "E")]
    [InlineData("Bbm7/Db", "1 b3 5 b7", "Db")]
    [InlineData("F/G", "1 3 5", "G")]
    [InlineData("D7/F\u266F", "1 3 5 b7", "F#")]
    [InlineData("Cm/maj7/Eb", "1 b3 5 7", "Eb")]
    [InlineData("A7(b9,#11)/C#", "1 3 5 b7 b9 #11", "C#")]
    public void A_slash_sets_the_bass_and_leaves_the_tones(string symbol, string degrees, string bass)
    {
        Assert.Equal(degrees, SymbolText.Degrees(symbol));
        Assert.Equal(bass, SymbolText.Chord(symbol).Lowest.ToString());
    }

    // Our readings where the open libraries differ or only one has the suffix: docs/chord-symbols.md.
    [Theory]
    [InlineData("C^", "1 3 5 7")]
    [InlineData("C^#5", "1 3 #5 7")]
    [InlineData("C11", "1 5 b7 9 11")]
    [InlineData("Cmaj11", "1 5 7 9 11")]
    [InlineData("C+11", "1 #5 b7 9 11")]
    [InlineData("C13", "1 3 5 b7 9 13")]
    [InlineData("Cmaj13", "1 3 5 7 9 13")]
    [InlineData("Cm13", "1 b3 5 b7 9 11 13")]
    [InlineData("C13b9", "1 3 5 b7 b9 13")]
    [InlineData("C6b5", "1 3 b5 6")]
    [InlineData("C7+9", "1 3 5 b7 #9")]
    [InlineData("C7-9", "1 3 5 b7 b9")]
    [InlineData("C13+11", "1 3 5 b7 9 #11 13")]
    [InlineData("C9+4", "1 3 5 b7 9 #11")]
    [InlineData("C7b5b9", "1 3 b5 b7 b9")]
    [InlineData("C7b13", "1 3 b7 b13")]
    [InlineData("C7b5b13", "1 3 b5 b7 b13")]
    [InlineData("C7sus4b9b13", "1 4 b7 b9 b13")]
    [InlineData("Cmaj7b6", "1 3 5 b6 7")]
    [InlineData("Cdim9", "1 b3 b5 bb7 9")]
    [InlineData("C7alt", "1 3 #5 b7 #9")]
    [InlineData("CM7add13", "1 3 5 7 13")]
    [InlineData("Cdim.", "1 b3 b5")]
    [InlineData("C-5", "1 3 b5")]
    [InlineData("Cm#7", "1 b3 5 7")]
    [InlineData("Cdom9", "1 3 5 b7 9")]
    [InlineData("Cdom7dim5", "1 3 b5 b7")]
    [InlineData("CMI7(add 11, omit 5)", "1 b3 b7 11")]
    [InlineData("Cdim7(add ma7,9,b13)", "1 b3 b5 bb7 7 9 b13")]
    [InlineData("C7SUS(add 3)", "1 3 4 5 b7")]
    [InlineData("C(add9,omit3)", "1 5 9")]
    [InlineData("C\u2077", "1 3 5 b7")]
    public void A_suffix_on_which_the_sources_differ_has_one_written_reading(string symbol, string degrees) =>
        Assert.Equal(degrees, SymbolText.Degrees(symbol));

    [Theory]
    [InlineData("Cm7b5", "Root Guide Guide Guide")]
    [InlineData("C6", "Root Guide Colour Colour")]
    [InlineData("C7#9", "Root Guide Colour Guide Guide")]
    [InlineData("Csus4", "Root Guide Colour")]
    [InlineData("Csus2", "Root Guide Colour")]
    [InlineData("C9", "Root Guide Colour Guide Colour")]
    [InlineData("C+", "Root Guide Guide")]
    [InlineData("Cadd9", "Root Guide Colour Colour")]
    [InlineData("Cadd4", "Root Guide Colour Colour")]
    [InlineData("C11", "Root Colour Guide Colour Guide")]
    [InlineData("C5", "Root Colour")]
    public void Third_seventh_and_named_alterations_guide(string symbol, string roles) =>
        Assert.Equal(roles, string.Join(' ', SymbolText.Chord(symbol).Tones.Select(t => t.Role)));

    [Theory]
    [InlineData("N.C.")]
    [InlineData(" NC ")]
    [InlineData("n.c.")]
    public void No_chord_has_a_sign_of_its_own(string text) => Assert.IsType<ChordText.NoChord>(Value(text));

    [Fact]
    public void A_chord_in_brackets_is_an_alternate()
    {
        var alternate = Assert.IsType<ChordText.Alternate>(Value("(E7)"));
        Assert.Equal("E7", alternate.Symbol.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("Fine")]
    [InlineData("A tempo")]
    [InlineData("a tempo")]
    [InlineData("D.C. al Fine")]
    [InlineData("Da capo")]
    [InlineData("Bridge 2")]
    [InlineData("Coda")]
    [InlineData("Dolce")]
    [InlineData("Abbey")]
    [InlineData("Amazed")]
    [InlineData("Bb clarinet")]
    [InlineData("(softly)")]
    [InlineData("(b)")]
    [InlineData("(H7)")]
    [InlineData("(C7xyz)")]
    [InlineData("Verse 1")]
    [InlineData("^above")]
    [InlineData("5")]
    public void Words_stay_words(string text) => Assert.Equal(text, Assert.IsType<ChordText.Words>(Value(text)).Text);

    [Theory]
    [InlineData("D/f+", "D/F#", "sheet:1:3: the bass 'f+' is taken as F#; expected 'F#'\n    D/f+\n      ^^\n")]
    [InlineData("Gm/bb", "Gm/Bb", "sheet:1:4: the bass 'bb' is taken as Bb; expected 'Bb'\n    Gm/bb\n       ^^\n")]
    [InlineData("Gd", "Gd", "sheet:1:2: 'd' is taken as diminished; expected 'dim'\n    Gd\n     ^\n")]
    [InlineData("D m", "Dm", "sheet:1:2: the blank inside a symbol is passed over; expected a symbol without blanks\n    D m\n     ^\n")]
    [InlineData("D7-9", "D7-9", "sheet:1:3: '-' before a degree is taken as 'b9'; expected 'b9'\n    D7-9\n      ^^\n")]
    [InlineData("Ea", "Ea", "sheet:1:2: 'a' is taken as augmented; expected 'aug'\n    Ea\n     ^\n")]
    [InlineData("Fa7", "Fa7", "sheet:1:2: 'a' is taken as augmented; expected 'aug'\n    Fa7\n     ^\n")]
    [InlineData("Galt", "Galt", "sheet:1:2: 'alt' does not say which tones are altered; taken as #5 and #9 with a seventh; expected the alterations by name, such as 7#5#9\n    Galt\n     ^^^\n")]
    [InlineData("C7alt", "C7alt", "sheet:1:3: 'alt' does not say which tones are altered; taken as #5 and #9 with a seventh; expected the alterations by name, such as 7#5#9\n    C7alt\n      ^^^\n")]
    public void What_can_mean_one_thing_only_is_read_with_a_warning(string text, string chord, string warning)
    {
        Assert.Equal(chord, SymbolText.Chord(text).ToString());
        Assert.Equal(warning, SymbolText.Messages(text));
    }

    [Theory]
    [InlineData("Ea", "Eaug")]
    [InlineData("Fa7", "Faug7")]
    [InlineData("Ea/B#", "Eaug/B#")]
    [InlineData("Gd7", "Gdim7")]
    public void A_small_letter_is_the_chord_that_its_word_names(string text, string word) =>
        Assert.Equal((SymbolText.Chord(word).Tones, SymbolText.Chord(word).Bass), (SymbolText.Chord(text).Tones, SymbolText.Chord(text).Bass));

    private static ChordText Value(string text) => Assert.IsType<Reading<ChordText>.Accepted>(SymbolText.Read(text)).Value;
}
