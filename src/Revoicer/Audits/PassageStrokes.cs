using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>The notes of a passage as strokes on a tower.</summary>
/// <param name="Strokes">The strokes, in order of time, then upward, limbs found by the least effort.</param>
/// <param name="Missing">Notes without a bell, in order of place, then upward.</param>
/// <param name="Shift">How much later than its tempo map the piece runs, so that a first roll has room.</param>
internal sealed record PassageStrokes(Items<Stroke> Strokes, Items<HeardNote> Missing, Seconds Shift)
{
    /// <summary>
    /// All voices as heard; two on one pitch at one place are one stroke. Notes with a roll mark that begin together come
    /// upward one roll step after another, the last on the beat, or a step before it where others strike there, as in drafts.
    /// </summary>
    /// <param name="passage">The passage.</param>
    /// <param name="tune">Its tune, whose strokes get the sound's touch of a tune; null where none is told apart.</param>
    /// <param name="tempi">The speeds.</param>
    /// <param name="instrument">The tower.</param>
    /// <param name="sound">The sound.</param>
    /// <param name="cancel">Stops the work.</param>
    public static PassageStrokes Of(Passage passage, PassageTune? tune, TempoMap tempi, Instrument instrument, Sound sound, CancellationToken cancel)
    {
        var ofTune = (tune is null ? [] : HeardTune.Of(tune.Sheet)).Select(n => (n.Start, n.Note)).ToHashSet();
        var heard = passage.Voices.SelectMany(passage.Heard)
            .GroupBy(n => (n.Start, n.Note))
            .Select(same => same.First() with { IsRolled = same.All(n => n.IsRolled), IsForFeet = same.Any(n => n.IsForFeet) })
            .OrderBy(n => n.Start)
            .ThenBy(n => n.Note)
            .ToLookup(n => instrument.Tower.At(n.Note) is not null);
        var leads = heard[true].GroupBy(n => n.Start)
            .SelectMany(chord => Leads([.. chord]).Select(l => (l.Note, Lead: sound.RollStep * l.Steps)))
            .ToArray();
        var shift = new Seconds(leads.Select(l => (l.Lead - tempi.At(l.Note.Start)).Value).Append(0).Max());
        var strokes = leads.Select(l => new Stroke(
            l.Note.Note, Limb.RightHand, l.Note.Start, l.Lead, tempi.At(l.Note.Start) - l.Lead + shift, TouchOf(l.Note))
        {
            IsTune = IsTune(l.Note),
            IsForFeet = l.Note.IsForFeet,
        });
        return new PassageStrokes(WithLimbs(instrument.Tower, strokes, cancel), heard[false].ToItems(), shift);

        bool IsTune(HeardNote note) => ofTune.Contains((note.Start, note.Note));

        Decibels TouchOf(HeardNote note) => IsTune(note) ? sound.TuneTouch : instrument.TouchOf(note.Note);
    }

    /// <summary>Strokes with limbs found by the least effort, in order of time, then upward.</summary>
    public static Items<Stroke> WithLimbs(Tower tower, IEnumerable<Stroke> strokes, CancellationToken cancel = default, int asLong = 0)
    {
        var chords = strokes.GroupBy(s => s.Beat).OrderBy(c => c.Key).Select(c => c.OrderBy(s => s.Note).ThenBy(s => s.At).ToArray()).ToArray();
        var limbs = PassageLimbs.Of(tower, [.. chords.Select(c => c.Select(s => new LineNote(s.Note, s.At) { IsForFeet = s.IsForFeet }).ToItems())], cancel, asLong);
        return InOrder(chords.SelectMany((chord, i) => chord.Select((stroke, n) => stroke with { Limb = limbs[i][n] })));
    }

    /// <summary>Strokes in order of time, then upward.</summary>
    public static Items<Stroke> InOrder(IEnumerable<Stroke> strokes) => strokes.OrderBy(s => s.At.Value).ThenBy(s => s.Note).ToItems();

    // How many roll steps each of the notes that begin together comes early. One note alone is no roll.
    private static IEnumerable<(HeardNote Note, int Steps)> Leads(HeardNote[] chord)
    {
        HeardNote[] rolled = [.. chord.Where(n => n.IsRolled)];
        var last = chord.Length > rolled.Length ? 1 : 0;
        return rolled.Length < 2
            ? chord.Select(n => (n, 0))
            : rolled.Select((n, i) => (n, rolled.Length - 1 - i + last)).Concat(chord.Where(n => !n.IsRolled).Select(n => (n, 0)));
    }
}
