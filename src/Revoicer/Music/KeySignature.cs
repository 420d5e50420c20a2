namespace Revoicer.Music;

/// <summary>A key: major, minor or one of the church modes.</summary>
/// <param name="Tonic">The keynote as spelled.</param>
/// <param name="Mode">Its scale.</param>
public readonly record struct KeySignature(NoteName Tonic, Mode Mode)
{
    /// <summary>Whether the third above the keynote is minor.</summary>
    public bool IsMinor => Mode is Mode.Minor or Mode.Dorian or Mode.Phrygian or Mode.Locrian;

    /// <summary>Sharps (positive) or flats (negative) of the signature; within -7..7 for keys in use.</summary>
    public int Fifths => Tonic.FifthsFromC - Above(Mode);

    /// <summary>The seven tones of its signature.</summary>
    public PitchClassSet Scale
    {
        get
        {
            var fifths = Fifths;
            return PitchClassSet.Of(Enumerable.Range(fifths - 1, 7).Select(f => NoteName.AtFifths(f).PitchClass));
        }
    }

    /// <summary>
    /// The key a number of semitones higher, spelled with the fewest accidentals; at six the flats (G flat major, E flat
    /// minor).
    /// </summary>
    public KeySignature Moved(int semitones)
    {
        var fifths = ((((Fifths + (7 * semitones)) % 12) + 12) % 12) switch
        {
            var f when f >= 6 => f - 12,
            var f => f,
        };
        return new KeySignature(NoteName.AtFifths(fifths + Above(Mode)), Mode);
    }

    /// <summary>
    /// Reads a key's name: a letter, accidentals (#, b or their signs), then optionally "m" or a mode ("minor", "dorian").
    /// </summary>
    /// <returns>False where the text is no key name, or a key of more than seven accidentals.</returns>
    public static bool TryParse(string text, out KeySignature key)
    {
        key = default;
        var trimmed = text.Trim().Replace('\u266F', '#').Replace('\u266D', 'b');
        if (trimmed.Length == 0 || !Enum.TryParse<Letter>(trimmed[..1].ToUpperInvariant(), out var letter) || !char.IsLetter(trimmed[0]))
        {
            return false;
        }

        var accidentals = trimmed[1..].TakeWhile(c => c is '#' or 'b').ToArray();
        if (ModeOf(trimmed[(1 + accidentals.Length)..].Trim()) is not { } mode)
        {
            return false;
        }

        key = new KeySignature(new NoteName(letter, accidentals.Sum(c => c == '#' ? 1 : -1)), mode);
        return accidentals.Distinct().Count() <= 1 && Math.Abs(key.Fifths) <= 7;
    }

    /// <summary>"Bb minor".</summary>
    public override string ToString() => $"{Tonic} {Mode.ToString().ToLowerInvariant()}";

    private static Mode? ModeOf(string word) => word switch
    {
        "" => Mode.Major,
        "m" => Mode.Minor,
        _ when word.All(char.IsAsciiLetter) && Enum.TryParse<Mode>(word, ignoreCase: true, out var mode) => mode,
        _ => null,
    };

    // How many fifths the keynote lies above that of the major key with the same signature.
    private static int Above(Mode mode) => mode switch
    {
        Mode.Lydian => -1,
        Mode.Mixolydian => 1,
        Mode.Dorian => 2,
        Mode.Minor => 3,
        Mode.Phrygian => 4,
        Mode.Locrian => 5,
        _ => 0,
    };
}
