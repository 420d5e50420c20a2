using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>
/// What it costs to take the notes of a passage with given limbs, in the unit of effort: the chords by themselves, the moves
/// between them. What a hard limit forbids costs more than any effort, so that where nothing is playable the least is broken.
/// </summary>
internal sealed class PassageEffort(Tower tower)
{
    // Estimates, in the unit of effort: a limit that is broken; the left hand alone, where the right would do; two batons
    // in one hand; a hand over the other; a foot on a key from middle C up, where the hands are at home.
    private const double Broken = 1000;
    private const double LeftHandAlone = 1;
    private const double PairInHand = 1.5;
    private const double CrossedHands = 3;
    private const double HighPedal = 2;

    private const int MiddleC = 60;
    private const double Rounding = 1e-6;

    private readonly Reach _reach = new(PlayingLimits.For(tower), tower.Transposition);
    private readonly Effort _effort = new(PlayingLimits.For(tower));
    private readonly LineLimbs _feet = LineLimbs.Feet(tower);

    /// <summary>A limb that has rested so long is in no hurry.</summary>
    public Seconds Longest => _reach.LongestEasyTime;

    /// <summary>The effort of a chord by itself; infinite where a foot has no pedal.</summary>
    /// <param name="notes">What is struck for it, upward.</param>
    /// <param name="limbs">The limb of each.</param>
    public double OfChord(IReadOnlyList<LineNote> notes, IReadOnlyList<Limb> limbs)
    {
        var (left, right) = (Keys(Limb.LeftHand), Keys(Limb.RightHand));
        WrittenNote[] pedals = [.. notes.Where((_, i) => limbs[i] is Limb.LeftFoot or Limb.RightFoot).Select(n => n.Note)];
        var feet = notes.Select((n, i) => limbs[i] is Limb.LeftFoot or Limb.RightFoot ? OfPedal(limbs[i], n.Note) : 0).Sum();
        return feet
            + _effort.OfGrip(pedals, left, right)
            + (left.Length > 0 && right.Length == 0 ? LeftHandAlone : 0)
            + (left.Length > 1 ? PairInHand : 0)
            + (right.Length > 1 ? PairInHand : 0)
            + (left.Length > 0 && right.Length > 0 && left[^1] > right[0] ? CrossedHands : 0)
            + (Broken * Pairs(notes, limbs));

        WrittenNote[] Keys(Limb limb) => [.. notes.Where((_, i) => limbs[i] == limb).Select(n => n.Note)];
    }

    /// <summary>The effort of one limb's strokes of a chord after what it took before, and what it holds then.</summary>
    /// <param name="limb">The limb.</param>
    /// <param name="before">What it took last; null where it has rested.</param>
    /// <param name="strokes">Its strokes in order of time.</param>
    public (double Effort, Grip? After) OfMoves(Limb limb, Grip? before, ReadOnlySpan<LineNote> strokes)
    {
        var effort = 0.0;
        for (var i = 0; i < strokes.Length;)
        {
            if (before is { } held && Joins(limb, held, strokes[i]))
            {
                effort += OfJoining(held, strokes[i]);
                before = held.With(strokes[i++]);
                continue;
            }

            var grip = Grip.Of(strokes[i++]);
            for (; i < strokes.Length && Joins(limb, grip, strokes[i]); i++)
            {
                effort += OfJoining(grip, strokes[i]);
                grip = grip.With(strokes[i]);
            }

            effort += before is { } from ? OfMove(limb, from, grip) : 0;
            before = grip;
        }

        return (effort, before);
    }

    /// <summary>The effort of all notes with given limbs.</summary>
    /// <param name="chords">For each place what is struck for it, upward.</param>
    /// <param name="limbs">The limbs of each.</param>
    public double Of(IReadOnlyList<Items<LineNote>> chords, IReadOnlyList<Items<Limb>> limbs)
    {
        var (sum, grips) = (0.0, default(Grips));
        for (var i = 0; i < chords.Count; i++)
        {
            sum += OfChord(chords[i], limbs[i]);
            foreach (var limb in limbs[i].Distinct())
            {
                LineNote[] strokes = [.. chords[i].Where((_, n) => limbs[i][n] == limb).OrderBy(n => n.At)];
                var (effort, after) = OfMoves(limb, grips[limb], strokes);
                (sum, grips) = (sum + effort, grips.With(limb, after));
            }
        }

        return sum;
    }

    // Two batons of one hand within the span and the time that counts as at once are one grip, with no move between them.
    private bool Joins(Limb limb, Grip grip, LineNote note) =>
        limb is Limb.LeftHand or Limb.RightHand
        && (note.At - grip.From).Value < _reach.AtOnce.Value - Rounding
        && _reach.HandSpans(grip.First, note.Note);

    private double OfJoining(Grip grip, LineNote note)
    {
        var (low, high) = note.Note < grip.First ? (note.Note, grip.First) : (grip.First, note.Note);
        return (_reach.HandHolds(grip.Keys + 1) ? 0 : Broken) + (_reach.HandTakes(low, high) ? 0 : Broken);
    }

    private double OfMove(Limb limb, Grip from, Grip to)
    {
        var has = to.From - from.Last;
        var (a, b) = Grip.Nearest(from, to);
        return Effort.OfHurry(has, _reach.EasyMoveTime(limb, a, b))
            + (has.Value + Rounding < _reach.MoveTime(limb, a, b).Value ? Broken : 0);
    }

    private double OfPedal(Limb foot, WrittenNote note) => _feet.PriceOf(foot, note) + (note.Midi >= MiddleC ? HighPedal : 0);

    // How many limits are broken between strokes of two hands or two feet.
    private int Pairs(IReadOnlyList<LineNote> notes, IReadOnlyList<Limb> limbs)
    {
        var broken = 0;
        for (var high = 1; high < notes.Count; high++)
        {
            for (var low = 0; low < high; low++)
            {
                var isAtOnce = Math.Abs((notes[high].At - notes[low].At).Value) < _reach.AtOnce.Value - Rounding;
                broken += isAtOnce && !Allows(limbs[low], notes[low].Note, limbs[high], notes[high].Note) ? 1 : 0;
            }
        }

        return broken;
    }

    private bool Allows(Limb lowLimb, WrittenNote low, Limb highLimb, WrittenNote high) => (lowLimb, highLimb) switch
    {
        (Limb.LeftFoot, Limb.RightFoot) => _reach.FeetTake(low, high),
        (Limb.RightFoot, Limb.LeftFoot) => false,
        (Limb.LeftHand, Limb.RightHand) => _reach.HandsTake(low, high),
        (Limb.RightHand, Limb.LeftHand) => _reach.HandsTake(low, high) && _reach.HandsCross(high, low),
        _ => true,
    };
}
