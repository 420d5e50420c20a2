using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>A stroke of the tune, on the clock before any shift for a first roll.</summary>
/// <param name="Note">The baton or pedal.</param>
/// <param name="Limb">What strikes it.</param>
/// <param name="Start">Where it is struck in the piece as heard.</param>
/// <param name="At">The same in seconds.</param>
/// <param name="Until">When the written note ends, in seconds; the bell rings on.</param>
/// <param name="Sheet">How the sheet writes it.</param>
public sealed record TuneStroke(WrittenNote Note, Limb Limb, Beats Start, Seconds At, Seconds Until, SheetNote Sheet);

/// <summary>The tune in one octave, with its limbs.</summary>
/// <param name="Layout">Where it lies to the chords.</param>
/// <param name="Octaves">By how many octaves it lies higher than written.</param>
/// <param name="Strokes">Its strokes in order of time.</param>
/// <param name="Told">What of it was left out or cannot be played as given, in sentences.</param>
/// <param name="Around">As long before and after a stroke as a limit of playing looks.</param>
public sealed record PlacedTune(TuneLayout Layout, int Octaves, Items<TuneStroke> Strokes, Items<string> Told, Seconds Around)
{
    /// <summary>Its octave in words: "an octave higher than written".</summary>
    public string OctaveInWords => OctaveNames.Of(Octaves);
}
