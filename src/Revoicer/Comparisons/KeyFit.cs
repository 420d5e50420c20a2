using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Comparisons;

/// <summary>How a sheet in one key fits a tower, before anything is voiced.</summary>
/// <param name="Tune">In how many octaves, of those asked for, the tower has all bells of the tune where its limbs reach; null without a tune.</param>
/// <param name="Basses">How many chord symbols the sheet has as heard.</param>
/// <param name="WithPedal">How many of them have a pedal for their root or slash bass, in any octave.</param>
/// <param name="MissingMet">
/// For how many of them the lowest key that the pedals have for that bass has no bell, so that it lies an octave higher at least.
/// </param>
public sealed record KeyFit(int? Tune, int Basses, int WithPedal, int MissingMet)
{
    /// <summary>Whether the tune fits in some octave, or there is none.</summary>
    public bool TuneFits => Tune is null or > 0;

    /// <summary>Looks at a sheet on a tower.</summary>
    /// <param name="sheet">The sheet in the key played.</param>
    /// <param name="tower">The tower.</param>
    /// <param name="layouts">Where the tune may lie; at least one place.</param>
    /// <param name="octave">By how many octaves higher than written it is to lie; null where any will do.</param>
    public static KeyFit Of(LeadSheet sheet, Tower tower, IReadOnlyList<TuneLayout> layouts, int? octave = null)
    {
        // When things are struck does not matter to which bells there are.
        var anyTempo = TempoMap.Steady(new Tempo(Beats.OfQuarters(1), 60));
        var reach = new Reach(PlayingLimits.For(tower), tower.Transposition);
        var placings = layouts.Select(layout => new TunePlacing(sheet, tower, reach, anyTempo, ease: false, layout)).ToArray();
        PitchClass[] basses = [.. HeardChords.Of(sheet).SelectMany(spans => spans).Select(c => c.Symbol).OfType<Chords.ChordSymbol>().Select(c => c.Lowest.PitchClass)];
        return new KeyFit(
            placings[0].HasTune ? placings.Sum(p => p.All().Count(t => octave is null || t.Octaves == octave)) : null,
            basses.Length,
            basses.Count(b => Pedals(tower, b).Any(tower.HasPedal)),
            basses.Count(b => Pedals(tower, b).ToArray() is [var lowest, ..] && !tower.HasPedal(lowest)));
    }

    private static IEnumerable<WrittenNote> Pedals(Tower tower, PitchClass pitchClass) =>
        Enumerable.Range(tower.PedalsFrom.Midi, tower.PedalsTo.Midi - tower.PedalsFrom.Midi + 1)
            .Select(WrittenNote.AtMidi)
            .Where(n => n.PitchClass == pitchClass);
}
