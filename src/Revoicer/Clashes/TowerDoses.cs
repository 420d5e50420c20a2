using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Clashes;

/// <summary>
/// The clash of strokes on a tower's bells, built once per tower and immutable. All results are in clash units: the
/// price of C4 E4 G4 on default bells, struck together and left to ring, is 100, its contradiction included with its
/// weight. Bells are given by their place in <see cref="Tower.Bells"/>; levels are 0 dB, a caller scales a pair of
/// strokes of x and y dB by 10^((x+y)/20) and a contradiction by 10^(x/10). docs/clash-model.md has the formulas.
/// </summary>
public sealed class TowerDoses
{
    private readonly Tower _tower;
    private readonly DoseTables _tables;
    private readonly Reference _reference;
    private readonly double _units;

    /// <summary>Works out the tables of a tower.</summary>
    /// <param name="tower">The tower.</param>
    /// <param name="fade">The fade from attention; <see cref="Fade.None"/> is the physics.</param>
    public TowerDoses(Tower tower, Fade fade)
    {
        _tower = tower;
        Fade = fade;
        _tables = new DoseTables(tower.Bells, fade);
        _reference = new Reference(fade, tower.Law);
        ReferenceDose = _reference.Within(Seconds.Forever);
        _units = 100 / ReferenceDose;
        Lasting = new Seconds(53 * Math.Log(2) / (2 * _tables.SlowestKappa));
    }

    /// <summary>The fade it was built with.</summary>
    public Fade Fade { get; }

    /// <summary>
    /// After this time nothing that a stroke adds to its dose is as much as a rounding of a double (2^-53 of the whole):
    /// the slowest partial decides.
    /// </summary>
    public Seconds Lasting { get; }

    /// <summary>D + 0.25 C of the reference chord left to ring, raw (s); 100 clash units.</summary>
    public double ReferenceDose { get; }

    /// <summary>
    /// The roughness of two strokes, from the later onset until both have died away; 0 for two strokes of one bell.
    /// </summary>
    /// <param name="earlier">The bell struck first.</param>
    /// <param name="later">The bell struck second.</param>
    /// <param name="delay">How long after the first, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bell the tower has not, or a delay below 0.</exception>
    public double Roughness(int earlier, int later, Seconds delay)
    {
        CheckBell(earlier, nameof(earlier));
        CheckBell(later, nameof(later));
        CheckDelay(delay);
        return _units * _tables.Roughness(earlier, later, delay);
    }

    /// <summary>The same for all pairs of bells at one delay.</summary>
    /// <param name="delay">How long after the earlier the later is struck, 0 or more.</param>
    /// <param name="table">Filled row by row, a row for each earlier bell: bells x bells values.</param>
    /// <exception cref="ArgumentOutOfRangeException">A delay below 0.</exception>
    /// <exception cref="ArgumentException">The table has another size.</exception>
    public void Roughness(Seconds delay, Span<double> table)
    {
        CheckDelay(delay);
        if (table.Length != _tables.Count * _tables.Count)
        {
            throw new ArgumentException($"the table holds {table.Length} values, not bells x bells = {_tables.Count * _tables.Count}", nameof(table));
        }

        _tables.Roughness(delay, _units, table);
    }

    /// <summary>The roughness of two strokes over a window; times are counted from the earlier stroke.</summary>
    /// <param name="earlier">The bell struck first.</param>
    /// <param name="later">The bell struck second.</param>
    /// <param name="delay">How long after the first, 0 or more.</param>
    /// <param name="from">Start of the window; what sounds before the later stroke does not count.</param>
    /// <param name="to">End of the window; may be <see cref="Seconds.Forever"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bell the tower has not, or a delay below 0.</exception>
    public double RoughnessWithin(int earlier, int later, Seconds delay, Seconds from, Seconds to)
    {
        CheckBell(earlier, nameof(earlier));
        CheckBell(later, nameof(later));
        CheckDelay(delay);
        return earlier == later ? 0 : _units * _tables.RoughnessWithin(earlier, later, delay, from, to);
    }

    /// <summary>The contradiction, weight included, of a stroke at time 0 against a chord that reigns over a window.</summary>
    /// <param name="bell">The bell struck.</param>
    /// <param name="chord">The chord as it sounds.</param>
    /// <param name="from">Start of the window; what lies before the stroke does not count.</param>
    /// <param name="to">End of the window; may be <see cref="Seconds.Forever"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bell the tower has not.</exception>
    public double Contradiction(int bell, ChordClasses chord, Seconds from, Seconds to)
    {
        CheckBell(bell, nameof(bell));
        return _units * Clashes.Contradiction.Weight * _tables.Contradiction(bell, chord, from, to);
    }

    /// <summary>
    /// What the reference chord has over a time from its stroke, in clash units; 100 times a windowed sum by this is
    /// the figure shown for a chord. <see cref="Seconds.Forever"/> gives 100.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is not positive.</exception>
    public double ReferenceWithin(Seconds length) => length.Value > 0
        ? _units * _reference.Within(length)
        : throw new ArgumentOutOfRangeException(nameof(length), length.Value, "a window has a positive length (s)");

    /// <summary>Adds up the clash of the strokes of a piece.</summary>
    /// <param name="strokes">The strokes in order of time.</param>
    internal RingSums Sums(RungStroke[] strokes) => new(_tables, _units, strokes);

    /// <summary>What the clash of some strokes in a window is made of, largest part first.</summary>
    /// <param name="strikes">The strokes, in any order; repeated strokes of a bell add up.</param>
    /// <param name="chord">The chord that reigns, as it sounds.</param>
    /// <param name="from">Start of the window, on the strokes' clock.</param>
    /// <param name="to">End of the window.</param>
    /// <param name="atMost">How many parts are wanted; all of them have shares that add up to 1, unless there is no clash.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bell the tower has not.</exception>
    public Items<ClashPart> Parts(IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to, int atMost)
    {
        foreach (var strike in strikes)
        {
            CheckBell(strike.Bell, nameof(strikes));
        }

        return ClashParts.Of(_tower.Bells, _tables, strikes, chord, from, to).Take(atMost).ToItems();
    }

    /// <summary>One of the parts of a clash, in full.</summary>
    internal ClashPart Part(RungPart part, IReadOnlyList<Strike> strikes, ChordClasses chord, Seconds from, Seconds to) =>
        ClashParts.One(_tower.Bells, _tables, part, strikes, chord, from, to);

    private void CheckBell(int bell, string name)
    {
        if ((uint)bell >= (uint)_tables.Count)
        {
            throw new ArgumentOutOfRangeException(name, bell, $"the tower's bells are numbered 0..{_tables.Count - 1}");
        }
    }

    private static void CheckDelay(Seconds delay)
    {
        if (!(delay.Value >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(delay), delay.Value, "a delay is 0 s or more");
        }
    }
}
