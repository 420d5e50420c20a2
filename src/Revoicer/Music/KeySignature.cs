namespace Revoicer.Music;

/// <summary>A major or minor key.</summary>
/// <param name="Tonic">The keynote as spelled.</param>
/// <param name="IsMinor">Whether it is minor.</param>
public readonly record struct KeySignature(NoteName Tonic, bool IsMinor)
{
    /// <summary>Sharps (positive) or flats (negative) of the signature; within -7..7 for keys in use.</summary>
    public int Fifths => Tonic.FifthsFromC - (IsMinor ? 3 : 0);

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
        return new KeySignature(NoteName.AtFifths(fifths + (IsMinor ? 3 : 0)), IsMinor);
    }

    /// <summary>
    /// Reads a key's name: a letter, accidentals (#, b or their signs), then optionally "m", "minor" or "major".
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
        var mode = trimmed[(1 + accidentals.Length)..].Trim();
        var minor = mode == "m" || mode.Equals("minor", StringComparison.OrdinalIgnoreCase);
        var major = mode.Length == 0 || mode.Equals("major", StringComparison.OrdinalIgnoreCase);
        key = new KeySignature(new NoteName(letter, accidentals.Sum(c => c == '#' ? 1 : -1)), minor);
        return (minor || major) && accidentals.Distinct().Count() <= 1 && Math.Abs(key.Fifths) <= 7;
    }

    /// <summary>"Bb minor".</summary>
    public override string ToString() => $"{Tonic} {(IsMinor ? "minor" : "major")}";
}
