using Revoicer.Text;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>A piece of a line of bars.</summary>
/// <param name="Where">Where it stands.</param>
internal abstract record GridPiece(Place Where)
{
    /// <summary>A bar line.</summary>
    /// <param name="Where">Where it stands.</param>
    /// <param name="Closes">Whether a repeat ends here.</param>
    /// <param name="Opens">Whether a repeat begins here.</param>
    /// <param name="IsDouble">Whether it ends a section.</param>
    internal sealed record BarLine(Place Where, bool Closes, bool Opens, bool IsDouble) : GridPiece(Where);

    /// <summary>"[1", "[2", or "[" with another number, of which there is no ending.</summary>
    internal sealed record Ending(Place Where, string Number) : GridPiece(Where);

    /// <summary>What stands in a bar: a chord symbol, "/", "%", or something that is none of them.</summary>
    internal sealed record Entry(Place Where, string Text) : GridPiece(Where);
}
