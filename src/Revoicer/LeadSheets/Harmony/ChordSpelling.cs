using Revoicer.Chords;
using Revoicer.Music;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>Writes chords that were found as symbols, spelled by the key (common practice): with flats where it has flats.</summary>
internal sealed class ChordSpelling
{
    // Twelve names in a row on the line of fifths, from so many below the signature. In C major D flat to F sharp, in A minor
    // E flat to G sharp, its leading note. Roots of diminished chords are mostly leading notes and go a step further still.
    private const int BelowMajor = 5;
    private const int BelowMinor = 3;
    private const int BelowDiminished = 2;

    private readonly Dictionary<(ChordGuess, int, bool), ChordSymbol> _known = [];

    /// <summary>The symbol; null for no chord.</summary>
    /// <param name="chord">The chord.</param>
    /// <param name="key">The key in force; null where the passage names none, which spells like C major.</param>
    public ChordSymbol? Of(ChordGuess chord, KeySignature? key)
    {
        if (chord.Kind < 0)
        {
            return null;
        }

        var (fifths, isMinor) = (key?.Fifths ?? 0, key?.IsMinor ?? false);
        if (!_known.TryGetValue((chord, fifths, isMinor), out var symbol))
        {
            symbol = Spelled(chord, fifths, isMinor);
            _known.Add((chord, fifths, isMinor), symbol);
        }

        return symbol;
    }

    private static ChordSymbol Spelled(ChordGuess chord, int fifths, bool isMinor)
    {
        var kind = ChordTemplate.All[chord.Kind];
        var below = isMinor ? BelowMinor : BelowMajor;
        var root = Name(chord.Root, fifths - (kind.IsDiminished ? Math.Min(below, BelowDiminished) : below));
        var symbol = SymbolParser.Parse(root + kind.Suffix).Symbol!;
        var bass = PitchClass.Of(chord.Bass);
        return chord.Bass == chord.Root ? symbol : symbol with
        {
            Bass = symbol.Tones.Where(t => t.PitchClass == bass).Select(t => (NoteName?)t.Name).FirstOrDefault() ?? Name(chord.Bass, fifths - below),
        };
    }

    // The one of the twelve names from a place on the line of fifths on that sounds so.
    private static NoteName Name(int semitonesAboveC, int from) =>
        Enumerable.Range(from, ChordGuess.Tones).Select(NoteName.AtFifths).First(n => n.PitchClass.Value == semitonesAboveC);
}
