using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Lists every way to play a slot: each bass bell on the feet (perhaps a second pedal above it), up to three tones in the
/// hands, in every figure that fits the time; and silence. Where the tune lies below, the feet are left to it. It prices
/// nothing and drops nothing.
/// </summary>
public sealed class CandidateSearch
{
    private const int TonesInHands = 3;

    // With both feet at work the hands take two tones: four bells at once (playing-limits.tsv, bells_at_once, soft).
    private const int TonesInHandsOverTwoPedals = 2;

    // A bass and two or three tones of one hand, a beat each.
    private const int BeatsForThree = 3;
    private const int BeatsForFour = 4;

    private readonly Tower _tower;
    private readonly Reach _reach;
    private readonly FigureStrokes _figures;
    private readonly BassInTenths _tenths;
    private readonly ApproachTones _approaches;
    private readonly OriginalLimbs _original;

    /// <summary>For a tower, at a speed, with a spacing of rolls.</summary>
    public CandidateSearch(Tower tower, Reach reach, Seconds rollStep)
    {
        _tower = tower;
        _reach = reach;
        _figures = new FigureStrokes(tower, reach, rollStep);
        _tenths = new BassInTenths(tower, reach);
        _approaches = new ApproachTones(tower, _figures);
        _original = new OriginalLimbs(tower, reach, _figures);
    }

    /// <summary>
    /// The candidates of a slot, lowest bells first, those with a bass in tenths after the others, then what was there before, silence last; no two come
    /// to the same strokes.
    /// </summary>
    public Items<Candidate> List(Slot slot)
    {
        var fit = new TuneFit(slot, _reach);
        var demand = ToneDemand.On(_tower, slot);
        Items<Baton>[] hands = [.. Hands(slot, Open(slot, fit))];
        List<Candidate> listed =
        [
            .. Voicings(slot, demand, hands).SelectMany(voicing => _figures.Of(slot, voicing, fit)),
            .. InTenths(slot, demand, hands, fit),
        ];
        listed.AddRange(WithFewerTones(slot, demand, hands, fit, listed));
        listed.AddRange(_approaches.Of(slot, [.. listed], fit));
        if (slot.Asked.Count > 0)
        {
            var known = listed.ToHashSet();
            listed.AddRange(slot.Asked.Distinct().Where(asked => asked.All(n => IsTone(slot, n))).SelectMany(notes => Exactly(slot, notes, fit)).Where(known.Add));
        }

        var silent = new Candidate(Figure.Silent, new Voicing(null, null, []), []);
        return slot.Original is { Notes.Count: > 0 } original
            ? WithOriginal([.. listed], _original.Of(slot, original, fit)).Append(silent).ToItems()
            : listed.Append(silent).ToItems();
    }

    // Where no voicing has its root lowest though it must: those that have, with as many tones as there is time for.
    private IEnumerable<Candidate> WithFewerTones(Slot slot, ToneDemand demand, Items<Baton>[] hands, TuneFit fit, List<Candidate> listed)
    {
        if (!slot.WantsRootLowest || slot.HasTuneBelow || listed.Exists(c => slot.HasRootLowest(c.Voicing)))
        {
            return [];
        }

        return demand.Eased()
            .Select(eased => Voicings(slot, eased, hands).Where(slot.HasRootLowest).SelectMany(voicing => _figures.Of(slot, voicing, fit)).ToArray())
            .FirstOrDefault(found => found.Length > 0) ?? [];
    }

    private bool IsTone(Slot slot, WrittenNote note) => _tower.At(note) is not null && slot.Symbol.PitchClasses.Contains(note.PitchClass);

    // Every way to share bells that the player asks for among feet and hands, whatever tones they leave out.
    private IEnumerable<Candidate> Exactly(Slot slot, Items<WrittenNote> notes, TuneFit fit)
    {
        for (var pedals = slot.HasTuneBelow ? 0 : Math.Min(2, notes.Count); pedals >= 0; pedals--)
        {
            var isOpen = notes.Take(pedals).All(_tower.HasPedal) && (pedals < 2 || _reach.FeetTake(notes[0], notes[1])) && _reach.BellsAtOnce(notes.Count);
            WrittenNote[] upper = [.. notes.Skip(pedals)];
            foreach (var hands in isOpen ? Hands(slot, upper).Where(h => h.Count == upper.Length) : [])
            {
                var voicing = new Voicing(pedals > 0 ? notes[0] : null, pedals > 1 ? notes[1] : null, hands);
                foreach (var candidate in _figures.Of(slot, voicing, fit, isAsked: true))
                {
                    yield return candidate;
                }
            }
        }
    }

    // What was there before is listed where no figure has the same bells in the same places.
    private static IEnumerable<Candidate> WithOriginal(Candidate[] listed, IEnumerable<Candidate> original)
    {
        var known = listed.Select(Places).ToHashSet();
        return listed.Concat(original.Where(c => !known.Contains(Places(c))));

        static Items<(WrittenNote, Beats)> Places(Candidate candidate) => candidate.Strokes.Select(s => (s.Note, s.After)).Order().ToItems();
    }

    private IEnumerable<Voicing> Voicings(Slot slot, ToneDemand demand, Items<Baton>[] hands)
    {
        foreach (var (bass, second) in slot.HasTuneBelow ? [(null, null)] : Feet(slot.Symbol))
        {
            var most = second is null ? TonesInHands : TonesInHandsOverTwoPedals;
            var lowest = second ?? bass;
            var pedals = (bass is null ? 0 : 1) + (second is null ? 0 : 1);
            foreach (var upper in hands)
            {
                var fits = upper.Count <= most
                    && _reach.BellsAtOnce(pedals + upper.Count)
                    && (upper.Count == 0 || lowest is null || upper[0].Note > lowest)
                    && demand.IsMet(bass, second, upper);
                if (fits && (bass is not null || upper.Count > 0))
                {
                    yield return new Voicing(bass, second, upper);
                }
            }
        }
    }

    // The bass moves with the tune, below all that the hands take; its first note is the bass of the chord.
    private IEnumerable<Candidate> InTenths(Slot slot, ToneDemand demand, Items<Baton>[] hands, TuneFit fit)
    {
        foreach (var line in (slot.HasTuneBelow ? [] : _tenths.Of(slot)).Where(line => IsBassTone(slot.Symbol, line.Bass.PitchClass)))
        {
            var tones = PitchClassSet.Of(line.LaterTones.Select(n => n.PitchClass));
            foreach (var upper in hands.Where(u => _figures.IsGrip(u) && _reach.BellsAtOnce(1 + u.Count) && (u.Count == 0 || u[0].Note > line.Highest)))
            {
                if (demand.IsMet(line.Bass, null, upper, tones)
                    && _figures.InTenths(slot, new Voicing(line.Bass, null, upper) { MovingBass = line.LaterTones }, line, fit) is { } candidate)
                {
                    yield return candidate;
                }
            }
        }
    }

    // Bass bells: root, third, fifth, seventh or the slash bass, in every octave of the pedals; a second pedal is a root
    // or a fifth at least a fifth above, so that the low bells stay apart.
    private IEnumerable<(WrittenNote? Bass, WrittenNote? Second)> Feet(ChordSymbol symbol)
    {
        var firm = PitchClassSet.Of(symbol.Tones.Where(t => t.Degree.Number is 1 or 5).Select(t => t.PitchClass));
        foreach (var bass in Pedals().Where(n => IsBassTone(symbol, n.PitchClass)))
        {
            yield return (bass, null);
            foreach (var second in Pedals().Where(n => (n - bass).Semitones >= 7 && firm.Contains(n.PitchClass) && _reach.FeetTake(bass, n)))
            {
                yield return (bass, second);
            }
        }

        yield return (null, null);
    }

    private IEnumerable<WrittenNote> Pedals() => _tower.Bells.Select(b => b.Note).Where(_tower.HasPedal);

    private static bool IsBassTone(ChordSymbol symbol, PitchClass pitchClass) =>
        symbol.Lowest.PitchClass == pitchClass
        || symbol.Tones.Any(t => t.Degree.Number is 1 or 3 or 5 or 7 && t.PitchClass == pitchClass);

    private WrittenNote[] Open(Slot slot, TuneFit fit) =>
        [.. fit.Open(_tower.Bells.Select(b => b.Note)).Where(n => slot.Symbol.PitchClasses.Contains(n.PitchClass))];

    // What the hands can take of some notes, at once or one after another, without the feet: nothing, or one to three of them upward.
    private IEnumerable<Items<Baton>> Hands(Slot slot, WrittenNote[] tones)
    {
        // The right hand has the tune, or where that lies below the left may have it.
        var free = slot.HasTuneBelow ? Limb.RightHand : Limb.LeftHand;

        // One after another, a beat each, a hand needs time to travel but no grip.
        var hasTimeToTravel = slot.Tunes.Count > 0 && slot.Length >= slot.Beat * BeatsForThree;
        yield return [];
        for (var a = 0; a < tones.Length; a++)
        {
            yield return [new Baton(tones[a], Limb.LeftHand)];
            yield return [new Baton(tones[a], Limb.RightHand)];
            for (var b = a + 1; b < tones.Length && _reach.HandsTake(tones[a], tones[b]); b++)
            {
                yield return [new Baton(tones[a], Limb.LeftHand), new Baton(tones[b], Limb.RightHand)];
                if (slot.Tunes.Count > 0 && (_reach.HandTakes(tones[a], tones[b]) || hasTimeToTravel))
                {
                    yield return [new Baton(tones[a], free), new Baton(tones[b], free)];
                }

                for (var c = b + 1; c < tones.Length && _reach.HandsTake(tones[a], tones[c]); c++)
                {
                    foreach (var (low, high) in Split(tones[a], tones[b], tones[c]))
                    {
                        yield return [new Baton(tones[a], Limb.LeftHand), new Baton(tones[b], low), new Baton(tones[c], high)];
                    }

                    if (hasTimeToTravel && slot.Length >= slot.Beat * BeatsForFour)
                    {
                        yield return [new Baton(tones[a], free), new Baton(tones[b], free), new Baton(tones[c], free)];
                    }
                }
            }
        }
    }

    // Who takes the middle of three tones.
    private IEnumerable<(Limb Middle, Limb Top)> Split(WrittenNote low, WrittenNote middle, WrittenNote high)
    {
        if (_reach.HandTakes(low, middle))
        {
            yield return (Limb.LeftHand, Limb.RightHand);
        }

        if (_reach.HandTakes(middle, high))
        {
            yield return (Limb.RightHand, Limb.RightHand);
        }
    }
}
