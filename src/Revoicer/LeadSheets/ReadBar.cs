using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets;

/// <summary>A bar line.</summary>
/// <param name="Where">Where it stands.</param>
/// <param name="Closes">Dots before it: a repeat ends, and what it repeats is heard once more often than there are dots.</param>
/// <param name="Opens">Dots behind it: a repeat begins.</param>
/// <param name="IsDouble">Whether it ends a section.</param>
internal sealed record ReadBarLine(Place Where, int Closes, int Opens, bool IsDouble)
{
    /// <summary>A bar parted where no bar line stands, by an ending or a part that begins inside it.</summary>
    public static ReadBarLine Unseen(Place where) => new(where, 0, 0, IsDouble: false);
}

/// <summary>A chord symbol at its place in a bar; without chord for N.C.</summary>
internal sealed record PlacedSymbol(Beats Start, ChordSymbol? Symbol, Place Where);

/// <summary>A bar while it is read, from one bar line to the next.</summary>
internal sealed class ReadBar
{
    /// <summary>The metre; null for free metre.</summary>
    public Meter? Meter { get; set; }

    /// <summary>The key that begins with it, where it changes.</summary>
    public KeyAlterations? Key { get; set; }

    /// <summary>How much of it has been read.</summary>
    public Beats Length { get; set; }

    /// <summary>Its first note or rest.</summary>
    public Place? Where { get; set; }

    public List<TuneNote> Notes { get; } = [];

    public List<PlacedSymbol> Symbols { get; } = [];

    public List<TempoChange> Tempi { get; } = [];

    public List<Beats> Fermatas { get; } = [];

    /// <summary>The bar line before it where it opens a repeat.</summary>
    public ReadBarLine? Opening { get; set; }

    /// <summary>Numbers of the ending that begins with it; empty where none does.</summary>
    public IReadOnlyList<int> Ending { get; set; } = [];

    /// <summary>Where its ending is marked.</summary>
    public Place? EndingPlace { get; set; }

    /// <summary>Dots before the bar line after it.</summary>
    public int Closes { get; set; }

    public bool EndsSection { get; set; }

    /// <summary>The part that begins with it; null where none does.</summary>
    public char? Part { get; set; }

    /// <summary>Whether no bar line stands before it.</summary>
    public bool IsParted { get; set; }

    public bool IsEmpty => Length == Beats.Zero;
}
