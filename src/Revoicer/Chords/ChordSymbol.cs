using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Chords;

/// <summary>What a tone does in its chord.</summary>
public enum ToneRole
{
    /// <summary>The root.</summary>
    Root,

    /// <summary>A tone that makes the chord what it is: third (or the tone suspended in its place), seventh, an altered tone named in the symbol.</summary>
    Guide,

    /// <summary>The rest: fifth, sixth, ninth and higher. May be left out at a price.</summary>
    Colour,
}

/// <summary>A place in the scale above the root: 3 flat is the minor third.</summary>
/// <param name="Number">1 to 7, or 9, 10, 11, 13 for tones above the octave.</param>
/// <param name="Alteration">Semitones from the major or perfect interval, -2..1.</param>
public readonly record struct Degree(int Number, int Alteration = 0)
{
    private static ReadOnlySpan<int> Scale => [0, 2, 4, 5, 7, 9, 11];

    /// <summary>Semitones above the root, up to 22.</summary>
    public int Semitones => Scale[(Number - 1) % 7] + (12 * ((Number - 1) / 7)) + Alteration;

    /// <summary>"b3", "5", "#11".</summary>
    public override string ToString() => (Alteration < 0 ? new string('b', -Alteration) : new string('#', Alteration)) + Number;
}

/// <summary>One tone of a chord.</summary>
/// <param name="Degree">Its place above the root.</param>
/// <param name="Name">Its spelled name.</param>
/// <param name="Role">What it does in the chord.</param>
public readonly record struct ChordTone(Degree Degree, NoteName Name, ToneRole Role)
{
    /// <summary>How it sounds.</summary>
    public PitchClass PitchClass => Name.PitchClass;
}

/// <summary>A chord as its symbol says it.</summary>
/// <param name="Root">The root as spelled.</param>
/// <param name="Suffix">What is written between root and slash, as found: "m7b5", "" for a plain major triad.</param>
/// <param name="Tones">The tones from the root upward by degree; the first is the root. The slash bass is not among them unless it is a chord tone.</param>
/// <param name="Bass">The tone after the slash as spelled; null where there is none.</param>
public sealed record ChordSymbol(NoteName Root, string Suffix, Items<ChordTone> Tones, NoteName? Bass)
{
    /// <summary>The tone that a plain reading puts lowest: the slash bass, else the root.</summary>
    public NoteName Lowest => Bass ?? Root;

    /// <summary>All pitch classes of the chord, slash bass included.</summary>
    public PitchClassSet PitchClasses => PitchClassSet.Of(Tones.Select(t => t.PitchClass)).With(Lowest.PitchClass);

    /// <summary>The third of the chord (minor or major); null where the chord has none.</summary>
    public PitchClass? Third => Tones.Where(t => t.Degree.Number is 3 or 10).Select(t => (PitchClass?)t.PitchClass).FirstOrDefault();

    /// <summary>The chord moved along the line of fifths, as when a piece moves to another key.</summary>
    public ChordSymbol Moved(int fifths)
    {
        var root = Root.Moved(fifths);
        return new ChordSymbol(
            root,
            Suffix,
            Tones.Select(t => t with { Name = root.Above(t.Degree.Number - 1, t.Degree.Semitones) }).ToItems(),
            Bass?.Moved(fifths));
    }

    /// <summary>The symbol in ASCII: "Bbm7/Db".</summary>
    public override string ToString() => Bass is { } bass ? $"{Root}{Suffix}/{bass}" : $"{Root}{Suffix}";
}
