using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>
/// Looks for a simple change with which a place can be played: each is tried on the strokes around it, with limbs found anew,
/// and told only where the checker then finds nothing against the place and no more than before around it.
/// </summary>
internal sealed class Remedies(Tower tower, Items<Stroke> strokes, TempoMap tempi, Seconds rollStep)
{
    // Longer than any bell or limb needs under the limits as shipped.
    private static readonly Seconds Around = new(1.5);

    // How much slower is tried, and how many notes are left out at most. Estimates of what a player would still do.
    private static readonly double[] Slower = [1.05, 1.1, 1.2, 1.3, 1.4, 1.5, 1.75, 2, 2.5, 3];
    private const int MostLeftOut = 3;

    private const int Octave = 12;

    // What is tried at one place at most, counted as the squares of how many notes each chord around it has, as the ways to
    // take a chord grow with those: 20 changes among five chords of four notes, and a file of clusters in quick succession
    // does not take minutes.
    private const int MostTried = 1600;

    // A place with more around it than this, counted alike, is tried with fewer ways to take each chord.
    private const int Crowded = 50;
    private const int LongPassage = 1_000;

    private readonly Checker _checker = new(tower);
    private readonly double _mostAtOnce = PlayingLimits.For(tower).Hard("bells_at_once");

    /// <summary>What would do at a place, as a clause; null where nothing of this kind does.</summary>
    /// <param name="place">The place.</param>
    /// <param name="isOfTime">Whether it is time alone that is wanting there.</param>
    public string? At(Beats place, bool isOfTime)
    {
        var here = strokes.Where(s => s.Beat == place).OrderBy(s => s.Note).ToArray();
        var (from, to) = (here.Min(s => s.At.Value), here.Max(s => s.At.Value));
        var around = strokes.Where(s => s.At.Value >= from - Around.Value && s.At.Value <= to + Around.Value).ToArray();
        var size = around.GroupBy(s => s.Beat).Sum(chord => chord.Count() * chord.Count());
        if (here.Length - MostLeftOut > _mostAtOnce || size > MostTried)
        {
            return null;
        }

        var asFound = Breaches(around, place, size);
        var trial = new Trial(this, place, around, asFound.Elsewhere, size);
        return (asFound.Here == 0 ? OtherLimbs(trial) : null)
            ?? (isOfTime ? SlowerTempo(trial) : null)
            ?? Roll(trial, here)
            ?? OtherOctave(trial, here)
            ?? LeaveOut(trial, here)
            ?? (isOfTime ? null : SlowerTempo(trial));
    }

    private (int Here, int Elsewhere) Breaches(IEnumerable<Stroke> changed, Beats place, int size)
    {
        var played = WithLimbs(changed, size);
        var times = played.Where(s => s.Beat == place).Select(s => s.At).ToHashSet();
        var breaches = _checker.Check(played);
        return (breaches.Count(b => times.Contains(b.At)), breaches.Count(b => !times.Contains(b.At)));
    }

    private Items<Stroke> WithLimbs(IEnumerable<Stroke> changed, int size) => PassageStrokes.WithLimbs(tower, changed, asLong: LongPassage * size / Crowded);

    // Only where the limbs were given: those that were found would have been these.
    private string OtherLimbs(Trial trial)
    {
        var taken = WithLimbs(trial.Around, trial.Size).Where(s => s.Beat == trial.Place);
        return $"take it with other limbs: {string.Join(", ", taken.Select(s => $"{s.Note} {LimbNames.Of(s.Limb)}"))}";
    }

    private string? SlowerTempo(Trial trial)
    {
        var tempo = tempi.Changes.Last(c => c.From <= trial.Place).Tempo;
        foreach (var perMinute in Slower.Select(f => Math.Floor(tempo.PerMinute / f)).Where(p => p >= 1).Distinct())
        {
            var factor = tempo.PerMinute / perMinute;
            if (trial.Plays(trial.Around.Select(s => s with { At = ((s.At + s.Lead) * factor) - s.Lead })))
            {
                return $"play it at {tempo with { PerMinute = perMinute }}";
            }
        }

        return null;
    }

    // A roll begins no earlier than half-way from the stroke before, as in drafts.
    private string? Roll(Trial trial, Stroke[] here)
    {
        var beat = here[0].At;
        var before = trial.Around.Where(s => s.At < beat).Select(s => s.At.Value).DefaultIfEmpty(beat.Value - Around.Value).Max();
        var lead = rollStep * (here.Length - 1);
        if (here.Length < 2 || here.Any(s => s.Lead > Seconds.Zero) || lead.Value > (beat.Value - before) / 2)
        {
            return null;
        }

        var rolled = here.Select((s, i) => s with { Lead = lead - (rollStep * i), At = s.At - lead + (rollStep * i) });
        return trial.Plays(Others(trial).Concat(rolled)) ? "roll it" : null;
    }

    private string? OtherOctave(Trial trial, Stroke[] here)
    {
        if (here.Length < 2)
        {
            return null;
        }

        foreach (var (octave, word) in new[] { (-Octave, "lower"), (Octave, "higher") })
        {
            var midi = here[0].Note.Midi + octave;
            if (midi is < 0 or > 127 || tower.At(WrittenNote.AtMidi(midi)) is null || here.Any(s => s.Note.Midi == midi))
            {
                continue;
            }

            var moved = here[0] with { Note = WrittenNote.AtMidi(midi) };
            Stroke[] changed = [.. Others(trial), .. here[1..], moved];
            if (trial.Plays(changed))
            {
                var limb = WithLimbs(changed, trial.Size).First(s => s.Beat == trial.Place && s.Note == moved.Note).Limb;
                return $"play {here[0].Note} an octave {word}, {moved.Note} with the {LimbNames.Of(limb)}";
            }
        }

        return null;
    }

    // As few as will do, first those that another bell of the chord doubles. The highest stays where there is another. What
    // cannot be taken even with nothing around it is not tried among the others.
    private string? LeaveOut(Trial trial, Stroke[] here)
    {
        Stroke[] open = here.Length == 1 ? here : here[..^1];
        Stroke[] inOrder = [.. open.OrderByDescending(s => here.Count(o => o.Note.PitchClass == s.Note.PitchClass))];
        return Enumerable.Range(1, Math.Min(MostLeftOut, open.Length))
            .SelectMany(count => Choices(inOrder, count))
            .Where(left => Breaches(here.Except(left), trial.Place, trial.Size).Here == 0 && trial.Plays(Others(trial).Concat(here.Except(left))))
            .Select(left => $"leave out {string.Join(", ", left.Select(s => s.Note).Order())}")
            .FirstOrDefault();
    }

    private static IEnumerable<Stroke[]> Choices(Stroke[] strokes, int count) => count == 0
        ? [[]]
        : strokes.SelectMany((first, i) => Choices(strokes[(i + 1)..], count - 1), (first, rest) => (Stroke[])[first, .. rest]);

    private static IEnumerable<Stroke> Others(Trial trial) => trial.Around.Where(s => s.Beat != trial.Place);

    /// <summary>What is tried around a place.</summary>
    private sealed record Trial(Remedies Remedies, Beats Place, Stroke[] Around, int Elsewhere, int Size)
    {
        private int _tried;

        /// <summary>Whether the place can be played so; false without trying once enough was tried here.</summary>
        public bool Plays(IEnumerable<Stroke> changed)
        {
            _tried += Size;
            return _tried <= MostTried && Remedies.Breaches(changed, Place, Size) is (0, var elsewhere) && elsewhere <= Elsewhere;
        }
    }
}
