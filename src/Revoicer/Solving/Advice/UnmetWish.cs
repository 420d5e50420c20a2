using Revoicer.Bells;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Solving.Advice;

/// <summary>Says why no voicing of one chord meets a single wish, and which comes nearest.</summary>
/// <param name="tower">The tower.</param>
/// <param name="slot">The chord.</param>
/// <param name="candidates">What can be played there.</param>
/// <param name="tune">Where the tune lies; null where there is none.</param>
internal sealed class UnmetWish(Tower tower, Slot slot, Items<Candidate> candidates, PlacedTune? tune)
{
    /// <summary>What stands against the wish, as a clause.</summary>
    /// <param name="wish">The wish, met by none of the candidates.</param>
    /// <param name="slower">The tempo that would do; null where slowness does not help.</param>
    public string Against(Wish wish, int? slower) => wish switch
    {
        { IsBan: true } => "nothing else can be played there",
        { Thing: WishedThing.BassBell { Note: { } note } } => NoBass(note) ?? NotListed(slower),
        { Thing: WishedThing.LeftHandTop { Note: { } note } } => NoTone(note) ?? NotListed(slower),
        { Thing: WishedThing.OneBell { Note: var note } } => NoTone(note) ?? NotListed(slower),
        { Thing: WishedThing.WholeVoicing { Notes: var notes } } => Against(notes, slower),
        { Thing: WishedThing.LowestTone { Degree: var degree } } when slot.Symbol.Tones.All(t => t.Degree.Number != degree) =>
            $"{slot.Symbol} has no {WishedThing.LowestTone.NameOf(degree)}",
        { Thing: WishedThing.FigureNamed } when slower is not null => $"the chord lasts {slot.Duration}, which is no time for it",
        { Thing: WishedThing.FigureNamed } when slot.IsLast => "the last chord is struck together, rolled or after its bass, and rings",
        { Thing: WishedThing.FigureNamed { Name: var name } } => $"it wants {Figures.All.First(row => row.Name == name).Needs}",
        _ => NotListed(slower),
    };

    /// <summary>What comes nearest to the wish, as a clause; null where nothing does.</summary>
    public string? Nearest(Wish wish) => wish switch
    {
        { IsBan: true } => null,
        { Thing: WishedThing.BassBell { Note: { } note } } => NearestBell(note, c => c.Voicing.Bass is { } bass ? [bass] : []),
        { Thing: WishedThing.LeftHandTop { Note: { } note } } => NearestBell(note, c => c.Voicing.LeftHandTop is { } top ? [top] : []),
        { Thing: WishedThing.OneBell { Note: var note } } => NearestBell(note, c => c.Notes),
        { Thing: WishedThing.WholeVoicing { Notes: var notes } } => WishedBells.Nearest(notes, candidates) is { } nearest
            ? $"{string.Join(" ", nearest)}, the nearest that can be played there" : null,
        { Thing: WishedThing.LowestTone } => Tones() is { Length: > 0 } tones ? $"a tone that can lie lowest there: {string.Join(", ", tones)}" : null,
        { Thing: WishedThing.FigureNamed } => $"one of the figures that can be played there: {string.Join(", ", candidates.Select(c => c.Figure).Distinct().Order().Select(FigureNames.Of))}",
        _ => null,
    };

    private string Against(Items<WrittenNote> notes, int? slower) =>
        notes.Select(NoTone).FirstOrDefault(against => against is not null)
        ?? new WishedBells(tower, slot, tune).Against(notes)
        ?? NotListed(slower);

    private string? NoBass(WrittenNote note) =>
        NoBell(note)
        ?? (slot.HasTuneBelow ? "the tune lies below, and the feet strike nothing else" : null)
        ?? (tower.HasPedal(note) ? null : $"no foot plays {note}, the pedals go from {tower.PedalsFrom} to {tower.PedalsTo}")
        ?? NoTone(note)
        ?? (slot.Symbol.Lowest.PitchClass == note.PitchClass || slot.Symbol.Tones.Any(t => t.Degree.Number is 1 or 3 or 5 or 7 && t.PitchClass == note.PitchClass)
            ? null
            : $"{note} is none of the tones of {slot.Symbol} that are put in the bass: root, third, fifth, seventh, slash bass");

    private string? NoTone(WrittenNote note) =>
        NoBell(note) ?? (slot.Symbol.PitchClasses.Contains(note.PitchClass) ? null : $"{note} is no tone of {slot.Symbol}");

    private string? NoBell(WrittenNote note)
    {
        if (tower.At(note) is not null)
        {
            return null;
        }

        var (lowest, highest) = (tower.Bells[0].Note, tower.Bells[^1].Note);
        var compass = note < lowest || note > highest ? $", its compass goes from {lowest} to {highest}" : "";
        return $"{tower.Name} has no bell on {note}{compass}";
    }

    private string NotListed(int? slower) => (slower, slot.Tunes.Count) switch
    {
        ({ }, _) => $"the chord lasts {slot.Duration}, in which limbs and bells have no time for it",
        (null, > 0) => $"no voicing of {slot.Symbol} that can be played {(slot.HasTuneBelow ? "over" : "below")} the tune has it{(tune is null ? "" : $" (the tune lies {tune.OctaveInWords})")}",
        _ => $"no voicing of {slot.Symbol} that two hands and two feet can play has it",
    };

    // The same tone in another octave before another tone.
    private string? NearestBell(WrittenNote note, Func<Candidate, IEnumerable<WrittenNote>> bells)
    {
        var nearest = candidates.SelectMany(bells)
            .Distinct()
            .OrderBy(n => n.PitchClass == note.PitchClass ? 0 : 1)
            .ThenBy(n => (n - note).Size.Semitones)
            .ThenBy(n => n)
            .Select(n => (WrittenNote?)n)
            .FirstOrDefault();
        return nearest is { } found ? $"{found}, the nearest that can be played there" : null;
    }

    private string[] Tones() =>
        [.. slot.Symbol.Tones
            .Where(t => t.Degree.Number is 1 or 3 or 5 or 7 && candidates.Any(c => c.Lowest?.PitchClass == t.PitchClass))
            .Select(t => $"the {WishedThing.LowestTone.NameOf(t.Degree.Number)}")];
}
