using FsCheck;
using FsCheck.Fluent;
using Revoicer.Chords;
using Revoicer.Text;

namespace Revoicer.Tests.Chords;

/// <summary>A text put together from pieces that chord symbols are made of, mostly senseless.</summary>
public sealed record SymbolPieces(string Text);

/// <summary>A text that is read as a chord.</summary>
public sealed record GoodSymbol(string Text, ChordSymbol Symbol);

/// <summary>Generators for chord symbols.</summary>
public static class ChordGens
{
    private static readonly string[] Pieces =
    [
        "C", "Bb", "F#", "G\u266D", "H", "e", "m", "-", "M", "maj", "\u0394", "^", "dim", "o", "+", "\u00F8", "sus", "add", "omit",
        "no", "alt", "2", "4", "5", "6", "7", "9", "11", "13", "69", "b5", "#5", "b9", "#11", "b13", "(", ")", ",", " ", "/",
        "/E", "/f+", ".", "\uD834\uDD2A", "\uD834", "x", "15", "\0", "\t", "word",
    ];

    private static readonly string[] Roots = ["C", "Db", "C#", "D", "Eb", "E", "F", "F#", "Gb", "G", "Ab", "A", "Bb", "B", "Cb", "F##", "Bbb"];

    private static readonly string[] Heads =
        ["", "m", "-", "maj7", "7", "9", "m7", "m9", "dim7", "\u00F8", "+", "+M7", "6", "69", "mMaj7", "13", "m11", "sus4", "7sus4", "5", "o7", "\u0394"];

    private static readonly string[] Tails = ["", "", "", "b5", "(#5)", "add9", "(no5)", "b9", "(#9,b13)", "#11", "sus2", "-5", "/G", "/Ab", "/f+", " /D"];

    public static Arbitrary<SymbolPieces> AnyPieces() =>
        Gen.Elements(Pieces).ArrayOf().Select(p => new SymbolPieces(string.Concat(p))).ToArbitrary();

    public static Arbitrary<GoodSymbol> Good() =>
        (from root in Gen.Elements(Roots)
         from head in Gen.Elements(Heads)
         from tail in Gen.Elements(Tails)
         let text = root + head + tail
         let chord = Chord(text)
         where chord is not null
         select new GoodSymbol(text, chord)).ToArbitrary();

    internal static ChordSymbol? Chord(string text) =>
        SymbolText.Read(text) is Reading<ChordText>.Accepted { Value: ChordText.Chord chord } ? chord.Symbol : null;
}
