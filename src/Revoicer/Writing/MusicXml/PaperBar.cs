using Revoicer.Arrangements;
using Revoicer.Values;

namespace Revoicer.Writing.MusicXml;

/// <summary>A bar as written on paper: one hearing of it, and the signs around it.</summary>
/// <param name="Bar">The hearing.</param>
/// <param name="Heard">Its place among the bars as heard.</param>
internal sealed record PaperBar(ArrangedBar Bar, int Heard)
{
    /// <summary>Whether a double bar stands after it.</summary>
    public bool EndsSection { get; init; }

    /// <summary>Whether a repeat begins before it.</summary>
    public bool OpensRepeat { get; init; }

    /// <summary>How often the repeat that ends after it is heard in all; 0 where none ends.</summary>
    public int Times { get; init; }

    /// <summary>The times through for which an ending begins before it.</summary>
    public Items<int> EndingBegins { get; init; } = [];

    /// <summary>The times through for which an ending ends after it.</summary>
    public Items<int> EndingEnds { get; init; } = [];

    /// <summary>Whether the bar's chord symbol is to be shown again, since it is reached from more than one place.</summary>
    public bool IsEntrance => OpensRepeat || EndingBegins.Count > 0;
}
