namespace Revoicer.Music;

/// <summary>The seven letters of the scale, in the order in which they climb from C.</summary>
public enum Letter
{
    /// <summary>C.</summary>
    C,

    /// <summary>D.</summary>
    D,

    /// <summary>E.</summary>
    E,

    /// <summary>F.</summary>
    F,

    /// <summary>G.</summary>
    G,

    /// <summary>A.</summary>
    A,

    /// <summary>B.</summary>
    B,
}

/// <summary>
/// A spelled note without octave: a letter and an alteration in semitones (sharps positive, flats negative).
/// E flat and D sharp are different names for one <see cref="Music.PitchClass"/>.
/// </summary>
/// <param name="Letter">The letter.</param>
/// <param name="Alteration">Semitones added to the letter; a spelling as people write it lies within -2..2.</param>
public readonly record struct NoteName(Letter Letter, int Alteration = 0)
{
    // Semitones above C, and steps on the line of fifths from C, of the seven letters in climbing order.
    private static ReadOnlySpan<int> Semitones => [0, 2, 4, 5, 7, 9, 11];

    private static ReadOnlySpan<int> Fifths => [0, 2, 4, -1, 1, 3, 5];

    /// <summary>The twelve-tone class this name sounds as.</summary>
    public PitchClass PitchClass => PitchClass.Of(Semitones[(int)Letter] + Alteration);

    /// <summary>The place on the line of fifths, C = 0, G = 1, F = -1, F sharp = 6, B flat = -2.</summary>
    public int FifthsFromC => Fifths[(int)Letter] + (7 * Alteration);

    /// <summary>The name at a place on the line of fifths (C = 0, one step a perfect fifth up).</summary>
    public static NoteName AtFifths(int fifthsFromC)
    {
        // F = -1 is the first of the seven letters of each alteration: F C G D A E B.
        ReadOnlySpan<Letter> line = [Letter.F, Letter.C, Letter.G, Letter.D, Letter.A, Letter.E, Letter.B];
        var fromF = fifthsFromC + 1;
        var alteration = (int)Math.Floor(fromF / 7.0);
        return new NoteName(line[fromF - (7 * alteration)], alteration);
    }

    /// <summary>
    /// The name moved along the line of fifths, as when a piece moves to another key; a name that would need more
    /// than two accidentals is respelled.
    /// </summary>
    public NoteName Moved(int fifths)
    {
        var place = FifthsFromC + fifths;
        while (place > 19)
        {
            place -= 12;
        }

        while (place < -15)
        {
            place += 12;
        }

        return AtFifths(place);
    }

    /// <summary>The name that lies a number of letters and semitones above this one: (2, 3) is a minor third.</summary>
    /// <param name="letters">Letters upward: 0 for a prime, 1 for a second, ... ; 7 and more go into the next octave.</param>
    /// <param name="semitones">Semitones upward.</param>
    public NoteName Above(int letters, int semitones)
    {
        var steps = (int)Letter + letters;
        var letter = (Letter)(steps % 7);
        var natural = Semitones[(int)letter] + (12 * (steps / 7));
        return new NoteName(letter, Semitones[(int)Letter] + Alteration + semitones - natural);
    }

    /// <summary>ASCII spelling: "Eb", "F#", "Cbb".</summary>
    public override string ToString() =>
        Letter + (Alteration < 0 ? new string('b', -Alteration) : new string('#', Alteration));
}
