namespace Revoicer.Chords;

/// <summary>What a piece of text that stands where chord symbols stand turns out to be.</summary>
public abstract record ChordText
{
    private ChordText()
    {
    }

    /// <summary>A chord to be played.</summary>
    /// <param name="Symbol">The chord.</param>
    public sealed record Chord(ChordSymbol Symbol) : ChordText;

    /// <summary>A chord in brackets: one may play it instead of another, so it is not played unless someone asks.</summary>
    /// <param name="Symbol">The chord between the brackets.</param>
    public sealed record Alternate(ChordSymbol Symbol) : ChordText;

    /// <summary>"N.C.": from here on no chord sounds.</summary>
    public sealed record NoChord : ChordText;

    /// <summary>Text that is no chord at all: "a tempo", a fingering, nothing.</summary>
    /// <param name="Text">The text without blanks around it.</param>
    public sealed record Words(string Text) : ChordText;
}
