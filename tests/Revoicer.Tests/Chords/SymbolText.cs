using Revoicer.Chords;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Chords;

/// <summary>Reads symbols that stand alone on line 1 of "sheet".</summary>
internal static class SymbolText
{
    public static Place Place(string text) => new("sheet", 1, 1, text.Length, text);

    public static Reading<ChordText> Read(string text) => ChordSymbolReader.Read(text, Place(text));

    public static ChordSymbol Chord(string text) =>
        Assert.IsType<ChordText.Chord>(Assert.IsType<Reading<ChordText>.Accepted>(Read(text)).Value).Symbol;

    /// <summary>"C E G": the tones by name.</summary>
    public static string Tones(string text) => string.Join(' ', Chord(text).Tones.Select(t => t.Name));

    /// <summary>"1 3 5": the tones by degree.</summary>
    public static string Degrees(string text) => string.Join(' ', Chord(text).Tones.Select(t => t.Degree));

    /// <summary>Messages as the player sees them.</summary>
    public static string Messages(string text) => string.Concat(Read(text) switch
    {
        Reading<ChordText>.Refused refused => refused.Problems,
        Reading<ChordText>.Accepted accepted => accepted.Warnings,
        _ => [],
    });
}
