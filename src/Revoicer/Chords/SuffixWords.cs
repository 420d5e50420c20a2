namespace Revoicer.Chords;

/// <summary>What the first word of a suffix says of the triad.</summary>
internal enum Quality
{
    Major,
    MajorSeventh,
    Minor,
    Diminished,
    Augmented,
    HalfDiminished,
    Dominant,
    Power,
}

/// <summary>What a word further on in a suffix asks for.</summary>
internal enum Modifier
{
    Suspend,
    Add,
    Omit,
    RaiseFifth,
    LowerFifth,
    Alter,
    MajorSeventh,
    MajorSeventhSign,
}

/// <summary>A word of the suffix grammar.</summary>
/// <param name="Spelling">In small letters where it has several: then "Maj" and "MAJ" are the same word.</param>
/// <param name="Meaning">What it says.</param>
/// <param name="NotBefore">Beginnings of what may not follow, since then another word is meant.</param>
internal sealed record SuffixWord<T>(string Spelling, T Meaning, params string[] NotBefore)
{
    private readonly string _capital = char.ToUpperInvariant(Spelling[0]) + Spelling[1..];
    private readonly string _upper = Spelling.ToUpperInvariant();

    /// <summary>How many characters it takes where the cursor stands; 0 where it does not stand there.</summary>
    public int Lead(SymbolCursor cursor)
    {
        var here = cursor.Sees(Spelling) || (Spelling.Length > 1 && (cursor.Sees(_capital) || cursor.Sees(_upper)));
        return here && !NotBefore.Any(follower => IsFollowedBy(cursor, follower)) ? Spelling.Length : 0;
    }

    private bool IsFollowedBy(SymbolCursor cursor, string follower) =>
        follower.Select((c, i) => char.ToLowerInvariant(cursor.After(Spelling.Length + i)) == c).All(same => same);
}

/// <summary>
/// The words of the suffix grammar, longest first. Where they come from: the suffixes on which the open libraries tonal
/// (MIT), music21 (BSD-3), pychord (MIT) and chord-symbol (MIT) agree, and common practice.
/// </summary>
internal static class SuffixWords
{
    // "Cmadd9" and "Cmaug" hold "m", not "ma".
    private static readonly string[] AfterSmallM = ["dd", "ug", "lt"];

    public static readonly SuffixWord<Quality>[] Qualities =
    [
        new("power", Quality.Power),
        new("minor", Quality.Minor),
        new("major", Quality.Major),
        new("min", Quality.Minor),
        new("maj", Quality.Major),
        new("dim", Quality.Diminished),
        new("aug", Quality.Augmented),
        new("dom", Quality.Dominant),
        new("mi", Quality.Minor),
        new("ma", Quality.Major, AfterSmallM),
        new("m", Quality.Minor),
        new("-", Quality.Minor),
        new("M", Quality.Major),
        new("\u0394", Quality.MajorSeventh),
        new("^", Quality.MajorSeventh),
        new("o", Quality.Diminished, "mit"),
        new("\u00B0", Quality.Diminished),
        new("+", Quality.Augmented),
        new("\u00F8", Quality.HalfDiminished),
        new("h", Quality.HalfDiminished),
    ];

    public static readonly SuffixWord<Modifier>[] Major =
    [
        new("major", Modifier.MajorSeventh),
        new("maj", Modifier.MajorSeventh),
        new("ma", Modifier.MajorSeventh, AfterSmallM),
        new("M", Modifier.MajorSeventh),
        new("\u0394", Modifier.MajorSeventhSign),
        new("^", Modifier.MajorSeventhSign),
    ];

    public static readonly SuffixWord<Modifier>[] Modifiers =
    [
        new("altered", Modifier.Alter),
        new("omit", Modifier.Omit),
        new("sus", Modifier.Suspend),
        new("add", Modifier.Add),
        new("aug", Modifier.RaiseFifth),
        new("dim", Modifier.LowerFifth),
        new("alt", Modifier.Alter),
        new("no", Modifier.Omit),
        .. Major,
    ];
}
