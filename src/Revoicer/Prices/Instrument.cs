using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Prices;

/// <summary>A tower as the prices see it under one sound setting: its tables of roughness, carry, reach and effort.</summary>
public sealed class Instrument
{
    private const int MiddleC = 60;

    private readonly RingTables _rings;
    private readonly int[] _bellAtMidi = new int[128];
    private readonly Decibels _heavyTouch;
    private readonly Decibels _tuneTouch;
    private readonly double _effortWeight;

    /// <summary>Works out the tables for the default listener.</summary>
    public Instrument(Tower tower, Sound sound)
        : this(tower, sound, Listener.Default)
    {
    }

    /// <summary>Works out the tables.</summary>
    public Instrument(Tower tower, Sound sound, Listener listener)
    {
        Tower = tower;
        var limits = PlayingLimits.For(tower);
        Reach = new Reach(limits, tower.Transposition);
        Effort = new Effort(limits);
        Doses = new TowerDoses(tower, sound.Fade is { } fade ? Fade.Of(fade) : Fade.None);
        Carry = new TowerCarry(tower, listener);
        _heavyTouch = sound.HeavyTouch;
        _tuneTouch = sound.TuneTouch;
        _rings = new RingTables(Doses, [.. tower.Bells.Select(b => TouchOf(b.Note).AmplitudeFactor)], sound.Clash);
        _effortWeight = sound.Effort;
        RollStep = sound.RollStep;
        LongestMove = StrokeKinds.Microseconds(Reach.LongestEasyTime);
        Array.Fill(_bellAtMidi, -1);
        for (var i = 0; i < tower.Bells.Count; i++)
        {
            _bellAtMidi[tower.Bells[i].Note.Midi] = i;
        }
    }

    /// <summary>The tower.</summary>
    public Tower Tower { get; }

    /// <summary>What limbs can reach in which time.</summary>
    public Reach Reach { get; }

    /// <summary>The clash of its bells.</summary>
    public TowerDoses Doses { get; }

    /// <summary>How its bells carry.</summary>
    public TowerCarry Carry { get; }

    /// <summary>From one stroke of a roll to the next.</summary>
    public Seconds RollStep { get; }

    internal Effort Effort { get; }

    /// <summary>From this delay on (microseconds) no limb is in a hurry and every bell has recovered.</summary>
    internal long LongestMove { get; }

    /// <summary>From this delay on (microseconds) two strokes have nothing to do with each other.</summary>
    internal long LongestReach => Math.Max(Horizon, LongestMove);

    /// <summary>From this delay on (microseconds) no two bells are rough together.</summary>
    internal long Horizon => _rings.Horizon;

    /// <summary>The place of a bell in the tower.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The tower has no bell on that key.</exception>
    public int BellAt(WrittenNote note) => BellAtMidi(note.Midi) is var bell and >= 0
        ? bell
        : throw new ArgumentOutOfRangeException(nameof(note), note, "the tower has no bell there");

    /// <summary>How strongly a bell of the accompaniment is struck: heavy ones as the sound asks.</summary>
    public Decibels TouchOf(WrittenNote note) => note.Midi < MiddleC ? _heavyTouch : Decibels.Zero;

    /// <summary>The place of the bell on a key by its MIDI number; -1 where there is none.</summary>
    internal int BellAtMidi(int midi) => _bellAtMidi[midi];

    /// <summary>
    /// Adds the roughness of every kind of stroke of one slot with every kind of another that starts some microseconds
    /// later (or with itself), in thousandths: row = kind of the other, column = kind of the one.
    /// </summary>
    internal void AddRoughness(StrokeKinds one, StrokeKinds other, long apart, int[] table)
    {
        // One look-up of a delay's table for each pair of offsets, of which there are few.
        var bells = Tower.Bells.Count;
        for (var a = 0; a < one.Offsets.Count; a++)
        {
            for (var b = 0; b < other.Offsets.Count; b++)
            {
                var delay = apart + other.Offsets[b] - one.Offsets[a];
                var rings = _rings.At(Math.Abs(delay));
                var (oneStep, otherStep) = delay >= 0 ? (bells, 1) : (1, bells);
                foreach (var row in other.WithOffset(b))
                {
                    foreach (var column in one.WithOffset(a))
                    {
                        table[(row * one.Count) + column] += rings[(one[column].Bell * oneStep) + (other[row].Bell * otherStep)];
                    }
                }
            }
        }
    }

    /// <summary>The roughness of a stroke with one of the tune, which has its own touch.</summary>
    /// <param name="kind">The stroke, timed from the start of its slot.</param>
    /// <param name="tune">The stroke of the tune, timed from the start of the piece.</param>
    /// <param name="start">When the slot is heard, in microseconds.</param>
    internal int RoughnessWithTune(StrokeKind kind, StrokeKind tune, long start) =>
        (int)Math.Round(Roughness(kind, tune, -start) * TuneFactor(tune.Bell), MidpointRounding.AwayFromZero);

    /// <summary>The roughness of two strokes of the tune, both timed from the start of the piece.</summary>
    internal int RoughnessInTune(StrokeKind a, StrokeKind b) =>
        (int)Math.Round(Roughness(a, b, 0) * TuneFactor(a.Bell) * TuneFactor(b.Bell), MidpointRounding.AwayFromZero);

    /// <summary>The hurry of a limb between two strokes; 0 for different limbs, and for strokes at once.</summary>
    /// <param name="one">A stroke, timed from some start.</param>
    /// <param name="other">Another, timed from another start.</param>
    /// <param name="start">How many microseconds the start of the first is later than that of the other.</param>
    internal int Hurry(StrokeKind one, StrokeKind other, long start)
    {
        var apart = other.Offset - one.Offset - start;
        if (one.Limb != other.Limb || Math.Abs(apart) < StrokeKinds.Microseconds(Reach.AtOnce))
        {
            return 0;
        }

        var (from, to) = apart >= 0 ? (one, other) : (other, one);
        var easy = Reach.EasyMoveTime(from.Limb, Tower.Bells[from.Bell].Note, Tower.Bells[to.Bell].Note);
        return Thousandths.Of(_effortWeight * Effort.OfHurry(new Seconds(Math.Abs(apart) * 1e-6), easy));
    }

    private double TuneFactor(int bell) =>
        new Decibels(_tuneTouch.Value - TouchOf(Tower.Bells[bell].Note).Value).AmplitudeFactor;

    /// <summary>The same for the strokes of one candidate of each slot.</summary>
    internal int Roughness((StrokeKinds Kinds, int Candidate) one, (StrokeKinds Kinds, int Candidate) other, long apart)
    {
        var sum = 0;
        foreach (var a in one.Kinds.Of(one.Candidate))
        {
            foreach (var b in other.Kinds.Of(other.Candidate))
            {
                sum += Roughness(one.Kinds[a], other.Kinds[b], apart);
            }
        }

        return sum;
    }

    /// <summary>The roughness of two bells of the accompaniment, the second struck some microseconds after the first.</summary>
    internal int Roughness(int first, int second, long apart) => _rings.At(apart)[(first * Tower.Bells.Count) + second];

    private int Roughness(StrokeKind a, StrokeKind b, long apart)
    {
        var delay = apart + b.Offset - a.Offset;
        var bells = Tower.Bells.Count;
        return delay >= 0 ? _rings.At(delay)[(a.Bell * bells) + b.Bell] : _rings.At(-delay)[(b.Bell * bells) + a.Bell];
    }

    /// <summary>
    /// Adds, for every kind of stroke of one slot with every kind of another, what hurry a limb would be in, or
    /// <see cref="Thousandths.Forbidden"/> where one cannot follow the other, or the two would be struck at once. In a hand's pair each baton counts by itself,
    /// a little stricter than the nearest of two grips.
    /// </summary>
    internal void AddMoves(StrokeKinds one, StrokeKinds other, long apart, int[] table)
    {
        for (var row = 0; row < other.Count; row++)
        {
            for (var column = 0; column < one.Count; column++)
            {
                var delay = apart + other[row].Offset - one[column].Offset;
                if (Math.Abs(delay) < LongestMove)
                {
                    ref var price = ref table[(row * one.Count) + column];
                    var more = delay >= 0
                        ? MovePrice(one[column], other[row], new Seconds(delay * 1e-6))
                        : MovePrice(other[row], one[column], new Seconds(-delay * 1e-6));
                    price = more == Thousandths.Forbidden && price > Thousandths.MostForbidden - more ? price : price + more;
                }
            }
        }
    }

    private int MovePrice(StrokeKind from, StrokeKind to, Seconds has)
    {
        var (a, b) = (Tower.Bells[from.Bell].Note, Tower.Bells[to.Bell].Note);
        if (has < Reach.AtOnce || !Reach.MayFollow(a, from.Limb, b, to.Limb, has))
        {
            return Thousandths.Forbidden;
        }

        return from.Limb == to.Limb
            ? Thousandths.Of(_effortWeight * Effort.OfHurry(has, Reach.EasyMoveTime(from.Limb, a, b)))
            : 0;
    }
}
