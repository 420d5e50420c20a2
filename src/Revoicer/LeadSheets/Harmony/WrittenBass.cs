using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>
/// Gives the chords of a passage the bass that its music has: where the lowest voice has another tone of the chord than the
/// symbol's bass, that tone becomes the slash bass, so that inversions which are written stay. Where it goes on to another tone
/// of the chord on a beat, and stays there for a beat, another symbol begins.
/// </summary>
public static class WrittenBass
{
    // Written middle C: what mostly lies above it is no bass. Common practice.
    private const int BassBelow = 60;

    /// <summary>The sheet with the music's own basses; as it is where no voice under the tune is a bass.</summary>
    /// <param name="sheet">The chords of the passage, bar for bar.</param>
    /// <param name="passage">The passage.</param>
    /// <param name="tune">Its tune, which is no bass even where it lies lowest.</param>
    public static LeadSheet Over(LeadSheet sheet, Passage passage, PassageTune tune)
    {
        // A voice for the feet is the bass, where there is one and it is not the tune.
        var feet = passage.Voices.Where(v => v.IsForFeet).ToArray();
        var below = passage.Sheet.Bars.Select((_, bar) => Below(feet.Length > 0 ? feet : [.. passage.Voices], tune.Sheet.Bars[bar].Notes, bar)).ToArray();
        var basses = below.SelectMany(notes => notes.GroupBy(n => n.Start).Select(g => g.Min(n => n.Note.Midi))).Order().ToArray();
        return basses.Length == 0 || basses[basses.Length / 2] >= BassBelow
            ? sheet
            : sheet with { Bars = sheet.Bars.Select((bar, i) => bar with { Chords = bar.Chords.SelectMany(c => Parts(bar, c, below[i])).ToItems() }).ToItems() };
    }

    // The notes of a bar over which the tune lies.
    private static TuneNote[] Below(PassageVoice[] voices, Items<TuneNote> tune, int bar)
    {
        var own = tune.Select(n => (n.Start, n.Note)).ToHashSet();
        return [.. voices.SelectMany(v => v.Bars[bar])
            .Where(n => !own.Contains((n.Start, n.Note)) && !tune.Any(t => t.Start <= n.Start && t.Start + t.Length > n.Start && t.Note < n.Note))];
    }

    private static IEnumerable<ChordSpan> Parts(WrittenBar bar, ChordSpan span, TuneNote[] below)
    {
        if (span.Symbol is not { } symbol)
        {
            return [span];
        }

        var end = span.Start + span.Length;
        var parts = new List<ChordSpan> { span with { Symbol = BassAt(below, span.Start) is { } first ? WithBass(symbol, first) ?? symbol : symbol } };
        Beats[] places = [.. below.Select(n => n.Start).Where(at => at > span.Start && at < end && MetricGrid.IsOnBeat(bar, at)).Distinct().Order()];
        foreach (var at in places)
        {
            if (BassAt(below, at) is { } bass && WithBass(symbol, bass) is { } turned && turned.Lowest.PitchClass != parts[^1].Symbol!.Lowest.PitchClass && Stays(below, at, bass, bar.Meter.Beat))
            {
                var last = parts[^1];
                parts[^1] = last with { Length = at - last.Start };
                parts.Add(span with { Start = at, Length = end - at, Symbol = turned, IsHeld = false });
            }
        }

        return parts;
    }

    // The lowest that sounds at a place.
    private static PitchClass? BassAt(TuneNote[] below, Beats at) => below
        .Where(n => n.Start <= at && n.Start + n.Length > at)
        .OrderBy(n => n.Note)
        .Select(n => (PitchClass?)n.Note.PitchClass)
        .FirstOrDefault();

    private static bool Stays(TuneNote[] below, Beats at, PitchClass bass, Beats beat) => below
        .Select(n => n.Start)
        .Where(next => next > at && next < at + beat)
        .All(next => BassAt(below, next) == bass);

    // The chord over a bass; null where that is none of its tones, such as a passing note.
    private static ChordSymbol? WithBass(ChordSymbol symbol, PitchClass bass) =>
        symbol.Lowest.PitchClass == bass ? symbol
        : symbol.Root.PitchClass == bass ? symbol with { Bass = null }
        : symbol.Tones.Where(t => t.PitchClass == bass).Select(t => symbol with { Bass = t.Name }).FirstOrDefault();
}
