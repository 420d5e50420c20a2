using Revoicer.Chords;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads quoted text over the notes: chord symbols, or words.</summary>
internal sealed class SymbolTexts(TuneVoice voice, Remarks remarks)
{
    /// <summary>Reads the text between two quotation marks, which is no annotation.</summary>
    public void Read(string text, Place where)
    {
        var (chord, at) = WithoutAlternate(text, where);
        switch (ChordSymbolReader.Read(chord, at))
        {
            case Reading<ChordText>.Refused refused:
                remarks.Refuse(refused.Problems);
                break;
            case Reading<ChordText>.Accepted { Value: ChordText.Words words } when words.Text.Length > 0:
                remarks.WarnOnce(at, $"'{Quoted.Text(words.Text)}' is no chord and is passed over", "a chord symbol; '^' in front of words");
                break;
            case Reading<ChordText>.Accepted { Value: ChordText.Chord found } accepted:
                remarks.Warn(accepted.Warnings);
                voice.AddSymbol(found.Symbol, at);
                break;
            case Reading<ChordText>.Accepted { Value: ChordText.NoChord }:
                voice.AddSymbol(null, at);
                break;
        }
    }

    // "G(Em)": another chord in brackets right behind the first may be printed but is not played (standard 2.1, section
    // 4.18), so that it need not be one that can be read.
    private static (string Text, Place Where) WithoutAlternate(string text, Place where)
    {
        var bracket = text.IndexOf('(', StringComparison.Ordinal);
        var isTwo = bracket > 0
            && text.TrimEnd().EndsWith(')')
            && !IsChord(text, where)
            && IsChord(text[..bracket], where)
            && NamesNote(text[(bracket + 1)..]);
        return isTwo ? (text[..bracket], where.Part(0, bracket)) : (text, where);
    }

    private static bool IsChord(string text, Place where) =>
        ChordSymbolReader.Read(text, where) is Reading<ChordText>.Accepted { Value: ChordText.Chord };

    // A letter of a note; "b9" and "add9" belong to the chord before the bracket.
    private static bool NamesNote(string inner) =>
        inner.TrimStart() is [var letter and ((>= 'A' and <= 'H') or (>= 'a' and <= 'h')), var next, ..]
        && !(letter == 'b' && char.IsAsciiDigit(next))
        && !ChordSymbolReader.IsSuffixWord(inner.TrimStart());
}
