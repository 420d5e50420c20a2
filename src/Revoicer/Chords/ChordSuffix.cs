namespace Revoicer.Chords;

/// <summary>Finds how a chord that is told by its degrees is written as a symbol.</summary>
internal static class ChordSuffix
{
    private static readonly KnownSuffix[] Kinds =
    [
        .. new[] { "", "m", "+", "dim", "7", "maj7", "m7", "dim7", "+7", "m7b5", "mMaj7", "6", "m6", "9", "maj9", "m9", "11", "maj11", "m11", "13", "maj13", "m13", "sus2", "sus4", "7sus4", "9sus4", "5", "6/9" }
            .Select(suffix => new KnownSuffix(suffix, DegreesOf(suffix)!)),
    ];

    /// <summary>
    /// The suffix: the given one if it reads as just these degrees, else that of a plain kind, else the shortest that does, else the degrees listed in
    /// brackets, which no reader of symbols knows.
    /// </summary>
    /// <param name="degrees">The chord's degrees, the root among them.</param>
    /// <param name="given">How a sheet writes it.</param>
    public static string Of(IReadOnlyCollection<Degree> degrees, string given)
    {
        var wanted = degrees.ToHashSet();
        if (Reads(given))
        {
            return given;
        }

        return Kinds.FirstOrDefault(k => k.Degrees.SetEquals(wanted))?.Suffix ?? Kinds
            .SelectMany(kind => Spellings(kind, wanted))
            .OrderBy(suffix => suffix.Length)
            .FirstOrDefault(Reads)
            ?? $"({string.Join(' ', wanted.OrderBy(d => d.Number).ThenBy(d => d.Alteration))})";

        bool Reads(string suffix) => DegreesOf(suffix) is { } read && read.SetEquals(wanted);
    }

    private static IEnumerable<string> Spellings(KnownSuffix kind, HashSet<Degree> wanted)
    {
        var come = wanted.Except(kind.Degrees).OrderBy(d => d.Number).ThenBy(d => d.Alteration).ToArray();
        var gone = kind.Degrees.Except(wanted).Where(d => !come.Any(c => c.Number == d.Number)).OrderBy(d => d.Number).ToArray();
        var left = gone.Select(d => $"no{d.Number}").ToArray();
        yield return kind.Suffix + string.Concat(come.Select(d => d.ToString())) + string.Concat(left);
        yield return $"{kind.Suffix}({string.Join(',', come.Select(d => d.ToString()).Concat(left))})";
        yield return $"{kind.Suffix}({string.Join(',', come.Select(d => $"add{d}").Concat(left))})";
        yield return $"{kind.Suffix}({string.Join(',', come.Select(d => d.Alteration == 0 ? $"add{d}" : d.ToString()).Concat(left))})";
    }

    private static HashSet<Degree>? DegreesOf(string suffix) =>
        SymbolParser.Parse("C" + suffix).Symbol is { Bass: null, Root.Alteration: 0 } symbol ? [.. symbol.Tones.Select(t => t.Degree)] : null;

    private sealed record KnownSuffix(string Suffix, HashSet<Degree> Degrees);
}
