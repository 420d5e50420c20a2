using Revoicer.Text;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>What stands between two bar lines, before it is read as chords.</summary>
/// <param name="Entries">Symbols, "/" and "%", at least one.</param>
/// <param name="Opens">Whether a repeat begins before it.</param>
/// <param name="Ending">1 or 2 where an ending begins with it, else 0.</param>
/// <param name="SignPlace">Where the signs before it stand.</param>
/// <param name="Closes">Whether a repeat ends after it.</param>
/// <param name="EndsSection">Whether a double bar or a repeat sign stands after it.</param>
internal sealed record RawBar(
    IReadOnlyList<GridPiece.Entry> Entries,
    bool Opens,
    int Ending,
    Place SignPlace,
    bool Closes,
    bool EndsSection)
{
    /// <summary>From the first entry to the last.</summary>
    public Place Where => Entries[0].Where with
    {
        Length = Entries[^1].Where.Column + Entries[^1].Where.Length - Entries[0].Where.Column,
    };

    /// <summary>The bar's repeat signs, placed at the signs where there are some.</summary>
    public RepeatMarks Marks => new(Opens || Ending > 0 ? SignPlace : Where, Opens, Closes, Ending);
}
