using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>A bar of one part while it is read.</summary>
/// <param name="where">Where it stands.</param>
internal sealed class ReadMeasure(Place where)
{
    public Place Where => where;

    public bool IsImplicit { get; init; }

    /// <summary>How much of it is filled by the longest voice.</summary>
    public Beats Length { get; set; }

    /// <summary>The metre that holds in it; null for free metre.</summary>
    public Meter? Meter { get; set; }

    /// <summary>The key that begins with it, where one is given.</summary>
    public ReadKey? Key { get; set; }

    /// <summary>The notes of the voice that has the tune.</summary>
    public List<TuneNote> Notes { get; } = [];

    /// <summary>Chord symbols by place; null for no chord.</summary>
    public List<(Beats At, ChordSymbol? Symbol, Place Where)> Symbols { get; } = [];

    public List<TempoChange> Tempi { get; } = [];

    public List<Beats> Fermatas { get; } = [];

    public OrderSigns Signs { get; } = new();
}

/// <summary>A key that a part gives.</summary>
/// <param name="Named">Its name; null where the signature is none that has one.</param>
/// <param name="Fifths">Its sharps, flats negative.</param>
internal sealed record ReadKey(KeySignature? Named, int Fifths);

/// <summary>The signs of a bar that say in which order bars are heard.</summary>
internal sealed class OrderSigns
{
    public bool Opens { get; set; }

    /// <summary>How often a repeat that ends after the bar is heard; 0 where none ends.</summary>
    public int Times { get; set; }

    /// <summary>The times through of the ending that begins before the bar; empty where none does.</summary>
    public IReadOnlyList<int> Ending { get; set; } = [];

    public bool EndsEnding { get; set; }

    public bool EndsSection { get; set; }

    public bool IsSegno { get; set; }

    public bool IsCoda { get; set; }

    public bool ToCoda { get; set; }

    public bool IsFine { get; set; }

    public bool DaCapo { get; set; }

    public bool DalSegno { get; set; }
}
