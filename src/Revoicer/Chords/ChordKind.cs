using Revoicer.Values;

namespace Revoicer.Chords;

/// <summary>A chord kind of MusicXML 4.0 (kind-value in its schema) and the degrees that it stands for.</summary>
/// <param name="Name">The word in the file: "major-seventh".</param>
/// <param name="Degrees">From the root upward; none where the kind names no chord by its degrees.</param>
internal sealed record ChordKind(string Name, Items<Degree> Degrees)
{
    private static readonly Degree[] Major = [new(1), new(3), new(5)];
    private static readonly Degree[] Minor = [new(1), new(3, -1), new(5)];
    private static readonly Degree[] Diminished = [new(1), new(3, -1), new(5, -1)];
    private static readonly Degree[] Augmented = [new(1), new(3), new(5, 1)];
    private static readonly Degree Sixth = new(6);
    private static readonly Degree Seventh = new(7);
    private static readonly Degree FlatSeventh = new(7, -1);
    private static readonly Degree Ninth = new(9);
    private static readonly Degree Eleventh = new(11);
    private static readonly Degree Thirteenth = new(13);

    /// <summary>
    /// All 33, in the order of the schema. The functional sixths, "Tristan" and "other" are not told by degrees there;
    /// "none" is no chord.
    /// </summary>
    public static Items<ChordKind> All { get; } =
    [
        new("major", [.. Major]),
        new("minor", [.. Minor]),
        new("augmented", [.. Augmented]),
        new("diminished", [.. Diminished]),
        new("dominant", [.. Major, FlatSeventh]),
        new("major-seventh", [.. Major, Seventh]),
        new("minor-seventh", [.. Minor, FlatSeventh]),
        new("diminished-seventh", [.. Diminished, new(7, -2)]),
        new("augmented-seventh", [.. Augmented, FlatSeventh]),
        new("half-diminished", [.. Diminished, FlatSeventh]),
        new("major-minor", [.. Minor, Seventh]),
        new("major-sixth", [.. Major, Sixth]),
        new("minor-sixth", [.. Minor, Sixth]),
        new("dominant-ninth", [.. Major, FlatSeventh, Ninth]),
        new("major-ninth", [.. Major, Seventh, Ninth]),
        new("minor-ninth", [.. Minor, FlatSeventh, Ninth]),
        new("dominant-11th", [.. Major, FlatSeventh, Ninth, Eleventh]),
        new("major-11th", [.. Major, Seventh, Ninth, Eleventh]),
        new("minor-11th", [.. Minor, FlatSeventh, Ninth, Eleventh]),
        new("dominant-13th", [.. Major, FlatSeventh, Ninth, Eleventh, Thirteenth]),
        new("major-13th", [.. Major, Seventh, Ninth, Eleventh, Thirteenth]),
        new("minor-13th", [.. Minor, FlatSeventh, Ninth, Eleventh, Thirteenth]),
        new("suspended-second", [new(1), new(2), new(5)]),
        new("suspended-fourth", [new(1), new(4), new(5)]),
        new("Neapolitan", []),
        new("Italian", []),
        new("French", []),
        new("German", []),
        new("pedal", [new(1)]),
        new("power", [new(1), new(5)]),
        new("Tristan", []),
        new("other", []),
        new("none", []),
    ];

    /// <summary>
    /// The kind of some degrees with the fewest changes to it, the first of the schema's order on a tie, and the changes.
    /// </summary>
    /// <param name="degrees">A chord's degrees, the root among them.</param>
    public static (ChordKind Kind, Items<DegreeChange> Changes) Nearest(IReadOnlyCollection<Degree> degrees) => All
        .Where(kind => kind.Degrees.Count > 0)
        .Select(kind => (kind, Changes: DegreeChange.Between(kind.Degrees, degrees)))
        .MinBy(k => k.Changes.Count);
}
