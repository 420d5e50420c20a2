using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// How what stands in a slot already can be played as it is: the lowest notes of each moment by the feet, as far as there are
/// pedals, the others by the hands, in every way that goes with itself and with the tune. What is written for the feet is theirs
/// where there is a way.
/// </summary>
internal sealed class OriginalLimbs(Tower tower, Reach reach, FigureStrokes figures)
{
    // Of the ways up to a moment so many are carried on, those with most pedals first. A chord of one moment has at most twelve.
    private const int MostWays = 12;

    /// <summary>The ways; none where a bell is missing or limbs do not suffice.</summary>
    public IEnumerable<Candidate> Of(Slot slot, OriginalChord original, TuneFit fit)
    {
        if (original.Notes.Any(n => tower.At(n.Note) is null))
        {
            return [];
        }

        WrittenNote[] forFeet = [.. original.ForFeet.Select(n => n.Note).Where(tower.HasPedal)];
        var ways = Ways(slot, original, fit, forFeet);
        return (ways.Count > 0 || forFeet.Length == 0 ? ways : Ways(slot, original, fit, [])).Select(strokes => new Candidate(Figure.AsItWas, VoicingOf(strokes), strokes));
    }

    private List<Items<SlotStroke>> Ways(Slot slot, OriginalChord original, TuneFit fit, WrittenNote[] forFeet)
    {
        List<Items<SlotStroke>> ways = [[]];
        foreach (var moment in original.Notes.GroupBy(n => n.After).OrderBy(g => g.Key))
        {
            WrittenNote[] notes = [.. moment.Select(n => n.Note).Order()];
            ways = [.. ways
                .SelectMany(_ => Grips(notes), (way, grip) => (Items<SlotStroke>)[.. way, .. grip.Select(g => new SlotStroke(g.Note, g.Limb, moment.Key, 0))])
                .Where(strokes => strokes.All(s => s.IsPedal || !forFeet.Contains(s.Note)))
                .Where(strokes => figures.IsPlayable(slot, strokes, fit, isAsked: true))
                .Take(MostWays)];
        }

        return ways;
    }

    // Notes of one moment, upward, parted into feet, left hand and right hand.
    private IEnumerable<(WrittenNote Note, Limb Limb)[]> Grips(WrittenNote[] notes)
    {
        for (var pedals = Math.Min(2, notes.Length); pedals >= 0; pedals--)
        {
            if (notes[..pedals].All(tower.HasPedal) && (pedals < 2 || reach.FeetTake(notes[0], notes[1])))
            {
                foreach (var feet in Feet(notes[..pedals]))
                {
                    for (var left = notes.Length - pedals; left >= 0; left--)
                    {
                        var first = pedals + left;
                        if (IsGrip(notes[pedals..first]) && IsGrip(notes[first..]) && (left == 0 || first == notes.Length || reach.HandsTake(notes[pedals], notes[^1])))
                        {
                            yield return [.. feet, .. notes[pedals..first].Select(n => (n, Limb.LeftHand)), .. notes[first..].Select(n => (n, Limb.RightHand))];
                        }
                    }
                }
            }
        }
    }

    private IEnumerable<(WrittenNote, Limb)[]> Feet(WrittenNote[] pedals) => pedals switch
    {
        [] => [[]],
        [var one] => [[(one, figures.FootOf(one))], [(one, figures.FootOf(one) == Limb.LeftFoot ? Limb.RightFoot : Limb.LeftFoot)]],
        [var low, var high, ..] => [[(low, Limb.LeftFoot), (high, Limb.RightFoot)]],
    };

    private bool IsGrip(WrittenNote[] hand) => hand.Length <= 1 || (reach.HandHolds(hand.Length) && reach.HandTakes(hand[0], hand[^1]));

    // Bells held together with the first of them are the chord, what follows comes later.
    private static Voicing VoicingOf(Items<SlotStroke> strokes)
    {
        var first = strokes.Where(s => s.After == strokes[0].After).ToArray();
        var pedals = first.Where(s => s.IsPedal).Select(s => (WrittenNote?)s.Note).ToArray();
        var upper = first.Where(s => !s.IsPedal).Select(s => new Baton(s.Note, s.Limb)).ToItems();
        return new Voicing(pedals.FirstOrDefault(), pedals.Skip(1).FirstOrDefault(), upper)
        {
            MovingBass = strokes.Select(s => s.Note).Except(first.Select(s => s.Note)).ToItems(),
        };
    }
}
