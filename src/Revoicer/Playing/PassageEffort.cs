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

    // A hand on a note that is written for the feet: more than any effort, less than a limit that is broken.
    private const double NotForHands = 300;

    private const int MiddleC = 60;
    private const int MostKeys = 128;
    private const double Rounding = 1e-6;

    private readonly Reach _reach = new(PlayingLimits.For(tower), tower.Transposition);
    private readonly Effort _effort = new(PlayingLimits.For(tower));
    private readonly LineLimbs _feet = LineLimbs.Feet(tower);

    /// <summary>What of some grips still matters when the next stroke comes.</summary>
    public Grips At(Grips grips, Seconds next) => grips.Since(next - _reach.LongestEasyTime, next - _reach.AtOnce);

    /// <summary>The effort of a chord by itself; infinite where a foot has no pedal.</summary>
    /// <param name="notes">What is struck for it, upward.</param>
    /// <param name="limbs">The limb of each.</param>
    public double OfChord(ReadOnlySpan<LineNote> notes, ReadOnlySpan<Limb> limbs)
    {
        // One buffer for the keys of the feet and of each hand; a keyboard has no more than 128.
        var keys = notes.Length > MostKeys ? new WrittenNote[3 * notes.Length] : stackalloc WrittenNote[3 * notes.Length];
        var (inFeet, inLeft, inRight, misplaced, feet) = (0, 0, 0, 0, 0.0);
        for (var i = 0; i < notes.Length; i++)
        {
            misplaced += notes[i].IsForFeet && limbs[i] is Limb.LeftHand or Limb.RightHand && tower.HasPedal(notes[i].Note) ? 1 : 0;
            if (limbs[i] is Limb.LeftHand)
            {
                keys[notes.Length + inLeft++] = notes[i].Note;
            }
            else if (limbs[i] is Limb.RightHand)
            {
                keys[(2 * notes.Length) + inRight++] = notes[i].Note;
            }
            else
            {
                keys[inFeet++] = notes[i].Note;
                feet += OfPedal(limbs[i], notes[i].Note);
            }
        }

        ReadOnlySpan<WrittenNote> pedals = keys[..inFeet];
        ReadOnlySpan<WrittenNote> left = keys.Slice(notes.Length, inLeft);
        ReadOnlySpan<WrittenNote> right = keys.Slice(2 * notes.Length, inRight);
        return feet
            + (NotForHands * misplaced)
            + _effort.OfGrip(pedals, left, right)
            + (left.Length > 0 && right.Length == 0 ? LeftHandAlone : 0)
            + (left.Length > 1 ? PairInHand : 0)
            + (right.Length > 1 ? PairInHand : 0)
            + (left.Length > 0 && right.Length > 0 && left[^1] > right[0] ? CrossedHands : 0)
            + (Broken * Pairs(notes, limbs));
    }

    /// <summary>What is broken between the strokes of a chord and what the other hand or foot took just before it.</summary>
    /// <param name="before">What each limb took last.</param>
    /// <param name="strokes">The strokes of the chord.</param>
    public double OfMeeting(Grips before, LimbStrokes[] strokes)
    {
        var broken = 0;
        foreach (var (limb, notes) in strokes)
        {
            var other = OtherOf(limb);
            if (before[other] is not { } grip || !IsAtOnce(notes[0].At - grip.Keys.Last))
            {
                continue;
            }

            foreach (var note in notes)
            {
                broken += !IsAtOnce(note.At - grip.Keys.Last) || (Allows(other, grip.Keys.Low, limb, note.Note) && Allows(other, grip.Keys.High, limb, note.Note)) ? 0 : 1;
            }
        }

        return Broken * broken;
    }

    /// <summary>The effort of one limb's strokes of a chord after what it took before, and what it holds then.</summary>
    /// <param name="limb">The limb.</param>
    /// <param name="before">What it took last; null where it has rested.</param>
    /// <param name="strokes">Its strokes in order of time.</param>
    public (double Effort, Grip? After) OfMoves(Limb limb, Grip? before, ReadOnlySpan<LineNote> strokes)
    {
        var effort = 0.0;
        foreach (var stroke in strokes)
        {
            if (before is { } held && Joins(limb, held, stroke))
            {
                // With one key more the nearest way to the grip may be another.
                var wider = held.With(stroke);
                effort += OfJoining(held, stroke) + OfMoveTo(limb, wider) - OfMoveTo(limb, held);
                before = wider;
                continue;
            }

            var grip = Grip.Of(stroke, before?.Keys);
            effort += OfMoveTo(limb, grip);
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
            LimbStrokes[] strokes =
            [
                .. limbs[i].Distinct().Select(l => new LimbStrokes(l, [.. chords[i].Where((_, n) => limbs[i][n] == l).OrderBy(n => n.At)])),
            ];
            sum += OfChord(chords[i].AsSpan(), limbs[i].AsSpan()) + OfMeeting(grips, strokes);
            foreach (var (limb, notes) in strokes)
            {
                var (effort, after) = OfMoves(limb, grips[limb], notes);
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
        return (_reach.HandHolds(grip.Count + 1) ? 0 : Broken) + (_reach.HandTakes(low, high) ? 0 : Broken);
    }

    private double OfMoveTo(Limb limb, Grip grip)
    {
        if (grip.Before is not { } before)
        {
            return 0;
        }

        var has = grip.From - before.Last;
        var (a, b) = Grip.Nearest(before, grip.Keys);
        return Effort.OfHurry(has, _reach.EasyMoveTime(limb, a, b))
            + (has.Value + Rounding < _reach.MoveTime(limb, a, b).Value ? Broken : 0);
    }

    private double OfPedal(Limb foot, WrittenNote note) => _feet.PriceOf(foot, note) + (note.Midi >= MiddleC ? HighPedal : 0);

    // How many limits are broken between strokes of two hands or two feet.
    private int Pairs(ReadOnlySpan<LineNote> notes, ReadOnlySpan<Limb> limbs)
    {
        var broken = 0;
        for (var high = 1; high < notes.Length; high++)
        {
            for (var low = 0; low < high; low++)
            {
                broken += IsAtOnce(notes[high].At - notes[low].At) && !Allows(limbs[low], notes[low].Note, limbs[high], notes[high].Note) ? 1 : 0;
            }
        }

        return broken;
    }

    private static Limb OtherOf(Limb limb) => limb switch
    {
        Limb.LeftFoot => Limb.RightFoot,
        Limb.RightFoot => Limb.LeftFoot,
        Limb.LeftHand => Limb.RightHand,
        _ => Limb.LeftHand,
    };

    private bool IsAtOnce(Seconds apart) => Math.Abs(apart.Value) < _reach.AtOnce.Value - Rounding;

    private bool Allows(Limb one, WrittenNote a, Limb other, WrittenNote b) => (a <= b ? (one, other) : (other, one)) switch
    {
        (Limb.LeftFoot, Limb.RightFoot) => _reach.FeetTake(Lower(a, b), Higher(a, b)),
        (Limb.RightFoot, Limb.LeftFoot) => a == b,
        (Limb.LeftHand, Limb.RightHand) => _reach.HandsTake(Lower(a, b), Higher(a, b)),
        (Limb.RightHand, Limb.LeftHand) => _reach.HandsTake(Lower(a, b), Higher(a, b)) && _reach.HandsCross(Higher(a, b), Lower(a, b)),
        _ => true,
    };

    private static WrittenNote Lower(WrittenNote a, WrittenNote b) => a < b ? a : b;

    private static WrittenNote Higher(WrittenNote a, WrittenNote b) => a < b ? b : a;
}
