using System.Globalization;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>Places the tune of a sheet on a tower: in which octaves it fits, by which limbs it is played, what of it is told.</summary>
public sealed class TunePlacing
{
    /// <summary>Farther than so many octaves from where it is written no tune is taken for itself any more. Common practice.</summary>
    public const int MostOctaves = 2;

    private const int OctaveSemitones = 12;

    private readonly LeadSheet _sheet;
    private readonly Tower _tower;
    private readonly Reach _reach;
    private readonly TempoMap _tempi;
    private readonly bool _ease;
    private readonly TuneLayout _layout;
    private readonly LineLimbs _limbs;
    private readonly HeardNote[] _line;
    private readonly int _lowerNotes;

    /// <summary>For a sheet on a tower.</summary>
    /// <param name="sheet">The sheet, in the key in which it is played.</param>
    /// <param name="tower">The tower.</param>
    /// <param name="reach">What limbs can do.</param>
    /// <param name="tempi">The speeds.</param>
    /// <param name="ease">Whether a note that comes sooner than its bell recovers is left out.</param>
    /// <param name="layout">Where it is to lie.</param>
    public TunePlacing(LeadSheet sheet, Tower tower, Reach reach, TempoMap tempi, bool ease, TuneLayout layout = TuneLayout.Above)
    {
        (_sheet, _tower, _reach, _tempi, _ease, _layout) = (sheet, tower, reach, tempi, ease, layout);
        _limbs = layout == TuneLayout.Above ? LineLimbs.Hands : LineLimbs.FeetAndLeftHand(tower);
        var all = HeardTune.Of(sheet);
        _line = [.. all.GroupBy(n => n.Start).Select(g => g.MaxBy(n => n.Note)!)];
        _lowerNotes = all.Count - _line.Length;
    }

    /// <summary>Whether the sheet has a tune at all.</summary>
    public bool HasTune => _line.Length > 0;

    /// <summary>The tune in every octave in which the tower has all its bells where its limbs reach: as written first, then the nearest; none without a tune.</summary>
    public IEnumerable<PlacedTune> All() => Octaves().Where(_ => HasTune).Where(o => Fits(o * OctaveSemitones)).Select(Place);

    /// <summary>
    /// What would help a tune that does not fit in the octave asked for, or in none, in a sentence: other octaves; keys that have
    /// all its bells; another layout.
    /// </summary>
    /// <param name="octaves">By how many octaves higher than written it is to lie; null where any would do.</param>
    public string WhereItFits(int? octaves = null)
    {
        var (lowest, highest) = (_line.Min(n => n.Note.Midi), _line.Max(n => n.Note.Midi));
        var (where, otherwise, wider) = _layout == TuneLayout.Above
            ? ("", "", "")
            : (" on the pedals and in the lower half of the batons", ", or above the chords with --layout above", ", or --layout above,");
        var range = $"the tune goes from {WrittenNote.AtMidi(lowest)} to {WrittenNote.AtMidi(highest)}, and";
        var others = Octaves().Where(o => Fits(o * OctaveSemitones)).Order().ToArray();
        if (octaves is { } asked && others.Length > 0)
        {
            return $"{range} {OctaveNames.Of(asked)} {_tower.Name} does not have all its bells{where}; it fits with --octave {string.Join(", ", others)}{otherwise}";
        }

        range += $" in no octave has {_tower.Name} all its bells{where}";
        var fitting = Enumerable.Range(-5, 12)
            .Where(semitones => Octaves().Any(o => Fits(semitones + (o * OctaveSemitones))))
            .Select(semitones => semitones.ToString("+0;-0", CultureInfo.InvariantCulture))
            .ToArray();
        return fitting.Length > 0
            ? $"{range}; it fits with --key {string.Join(", ", fitting)}{otherwise}"
            : $"{range}, nor in any other key; a tower with a wider compass{wider} would do";
    }

    private static IEnumerable<int> Octaves() => Enumerable.Range(-MostOctaves, (2 * MostOctaves) + 1).OrderBy(Math.Abs).ThenByDescending(o => o);

    private bool Fits(int semitones) => _line.All(n =>
        n.Note.Midi + semitones is >= 0 and <= 127 and var midi && _tower.At(WrittenNote.AtMidi(midi)) is not null && _limbs.Take(WrittenNote.AtMidi(midi)));

    private PlacedTune Place(int octaves)
    {
        var told = new List<string>();
        if (_lowerNotes > 0)
        {
            told.Add($"of notes of the tune that are written together the highest is played; {(_lowerNotes == 1 ? "one lower one is" : $"{_lowerNotes} lower ones are")} left out");
        }

        var kept = Recovering(octaves, told);
        LineNote[] line = [.. kept.Select(n => new LineNote(Up(n, octaves), _tempi.At(n.Start)))];
        var limbs = LimbPlan.Of(_reach, _limbs, line);
        TellHurriedLimbs(kept, line, limbs, told);
        var strokes = kept.Select((n, i) => new TuneStroke(line[i].Note, limbs[i], n.Start, line[i].At, _tempi.At(n.End), new SheetNote(n.Name, n.Length)));
        return new PlacedTune(_layout, octaves, strokes.ToItems(), told.ToItems(), _reach.LongestEasyTime);
    }

    // The notes that are played: all, or without those that come sooner than their bell recovers.
    private List<HeardNote> Recovering(int octaves, List<string> told)
    {
        var kept = new List<HeardNote>();
        var last = new Dictionary<WrittenNote, HeardNote>();
        foreach (var note in _line)
        {
            var key = Up(note, octaves);
            if (last.TryGetValue(key, out var before))
            {
                var has = _tempi.At(note.Start) - _tempi.At(before.Start);
                var needs = _reach.RecoveryOf(key);
                if (has < needs && has.Value < needs.Value - 1e-6)
                {
                    var what = _ease ? "it is left out" : "--ease-tune leaves it out";
                    told.Add($"{PlaceOf(note)}: {key} is struck again after {has} and needs {needs} to recover; {what}, or play it at {Slower(before, has, needs)}");
                    if (_ease)
                    {
                        continue;
                    }
                }
            }

            last[key] = note;
            kept.Add(note);
        }

        return kept;
    }

    private void TellHurriedLimbs(List<HeardNote> kept, LineNote[] line, Items<Limb> limbs, List<string> told)
    {
        var none = _layout == TuneLayout.Above ? "no hand" : "neither foot nor left hand";
        var last = new Dictionary<Limb, int>();
        for (var i = 0; i < line.Length; i++)
        {
            if (last.TryGetValue(limbs[i], out var from) && line[from].Note != line[i].Note)
            {
                var has = line[i].At - line[from].At;
                var needs = _reach.MoveTime(limbs[i], line[from].Note, line[i].Note);
                if (has.Value < needs.Value - 1e-6)
                {
                    told.Add($"{PlaceOf(kept[i])}: {none} gets to {line[i].Note} in {has}, it takes {needs}; play it at {Slower(kept[from], has, needs)}");
                }
            }

            last[limbs[i]] = i;
        }
    }

    private static WrittenNote Up(HeardNote note, int octaves) => note.Note + new Interval(octaves * OctaveSemitones);

    private string PlaceOf(HeardNote note)
    {
        var bar = _sheet.Bars[note.WrittenBar];
        var start = _sheet.Played.First(p => p.Written == note.WrittenBar && p.Pass == note.Pass).Start;
        var beat = ((bar.Offset + note.Start - start).Quarters / bar.Meter.Beat.Quarters) + 1;
        return string.Create(CultureInfo.InvariantCulture, $"bar {bar.Number} beat {beat:0.##}");
    }

    // The fastest tempo at which a passage can be played, rounded down, in the unit of the tempo that it has;
    // a change of speed within it is not looked at.
    private string Slower(HeardNote at, Seconds has, Seconds needs)
    {
        var tempo = _tempi.Changes.Last(c => c.From <= at.Start).Tempo;
        return (tempo with { PerMinute = Math.Floor((tempo.PerMinute * has.Value / needs.Value) + 1e-6) }).ToString();
    }
}
