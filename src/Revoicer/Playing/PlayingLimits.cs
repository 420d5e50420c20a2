using System.Collections.Frozen;
using System.Globalization;
using System.Runtime.CompilerServices;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Playing;

/// <summary>One row of the table of reach and timing.</summary>
/// <param name="Key">Its key, by which a tower overrides it and a report cites it.</param>
/// <param name="Hard">What the program never breaks, in the unit the key ends with; null where nothing is hard.</param>
/// <param name="Soft">Where effort begins to cost; null where nothing is.</param>
/// <param name="Basis">What the number rests on: published, derived, practice.</param>
public sealed record PlayingLimit(string Key, double? Hard, double? Soft, string Basis);

/// <summary>
/// Reach and timing of hands and feet at a baton keyboard: the rows of playing-limits.tsv, which names the basis of each
/// number, with what a tower sets for itself. Spans in semitones, times in seconds; all times are estimates.
/// </summary>
public sealed class PlayingLimits
{
    private static readonly Lazy<PlayingLimits> FromTable = new(() => new PlayingLimits(ReadTable()));

    private readonly FrozenDictionary<string, PlayingLimit> _rows;

    private PlayingLimits(IEnumerable<PlayingLimit> rows)
    {
        _rows = rows.ToFrozenDictionary(r => r.Key);
        HandSpan = new Interval((int)Hard("hand_span"));
        HandPairLowest = (int)Math.Ceiling(Hard("hand_pair_lowest_n"));
        HandsApart = new Interval((int)Hard("hands_apart"));
        HandsCrossed = new Interval((int)Hard("hands_crossed"));
        FeetApart = new Interval((int)Hard("feet_apart"));
        HandKeysAtOnce = (int)Hard("hand_keys_at_once");
        BellsAtOnce = (int)Hard("bells_at_once");
        AtOnce = new Seconds(Hard("at_once_s"));
        HandMove = new MoveLaw(Hard("hand_move_base_s"), Hard("hand_move_per_doubling_s"), Hard("row_change_s"), Hard("heavy_key_below_n60_s"));
        FootMove = new MoveLaw(Hard("foot_move_base_s"), Hard("foot_move_per_doubling_s"), Hard("row_change_s"), Hard("heavy_key_below_n60_s"));
        EasyHandMove = new MoveLaw(Soft("hand_move_base_s"), Soft("hand_move_per_doubling_s"), Soft("row_change_s"), Soft("heavy_key_below_n60_s"));
        EasyFootMove = new MoveLaw(Soft("foot_move_base_s"), Soft("foot_move_per_doubling_s"), Soft("row_change_s"), Soft("heavy_key_below_n60_s"));
    }

    /// <summary>The limits as shipped.</summary>
    public static PlayingLimits Shipped => FromTable.Value;

    /// <summary>Keys of all rows.</summary>
    public static IEnumerable<string> Keys => Shipped._rows.Keys.Order(StringComparer.Ordinal);

    internal Interval HandSpan { get; }

    // A written MIDI note; a tower may also set one between two keys.
    internal int HandPairLowest { get; }

    internal Interval HandsApart { get; }

    internal Interval HandsCrossed { get; }

    internal Interval FeetApart { get; }

    internal int HandKeysAtOnce { get; }

    internal int BellsAtOnce { get; }

    internal Seconds AtOnce { get; }

    internal MoveLaw HandMove { get; }

    internal MoveLaw FootMove { get; }

    internal MoveLaw EasyHandMove { get; }

    internal MoveLaw EasyFootMove { get; }

    /// <summary>The shipped rows with a tower's own in their place.</summary>
    public static PlayingLimits For(Tower tower)
    {
        var rows = Shipped._rows.ToDictionary();
        foreach (var own in tower.Limits)
        {
            var row = rows[own.Key];
            rows[own.Key] = row with { Hard = own.Hard ?? row.Hard, Soft = own.Soft ?? row.Soft, Basis = "set by the tower file" };
        }

        return tower.Limits.Count == 0 ? Shipped : new PlayingLimits(rows.Values);
    }

    /// <summary>The row with a key.</summary>
    /// <exception cref="KeyNotFoundException">There is no such row.</exception>
    public PlayingLimit Row(string key) => _rows[key];

    /// <summary>The hard half of a row.</summary>
    public double Hard(string key) => _rows[key].Hard ?? throw new KeyNotFoundException($"the limit {key} has no hard value");

    /// <summary>The soft half of a row.</summary>
    public double Soft(string key) => _rows[key].Soft ?? throw new KeyNotFoundException($"the limit {key} has no soft value");

    /// <summary>The least time between two strokes on one bell, by its register at concert pitch.</summary>
    public Seconds Recovery(WrittenNote note, Transposition transposition) => new(Hard(RecoveryKey(note, transposition)));

    /// <summary>The row that holds a bell's recovery time; heavy bells need longer.</summary>
    /// <param name="note">The bell's key.</param>
    /// <param name="transposition">The tower's; the rows speak of a concert-pitch instrument, where it is 12.</param>
    public static string RecoveryKey(WrittenNote note, Transposition transposition) =>
        (note.Midi + transposition.Semitones - 12) switch
        {
            < 48 => "recovery_below_48_s",
            < 60 => "recovery_48_59_s",
            < 72 => "recovery_60_71_s",
            < 84 => "recovery_72_83_s",
            _ => "recovery_from_84_s",
        };

    private static IEnumerable<PlayingLimit> ReadTable()
    {
        var lines = Embedded.Text("Revoicer.Playing.playing-limits.tsv").Split('\n');
        return [.. lines
            .Where(line => line.Length > 0 && line[0] != '#' && !line.StartsWith("key\t", StringComparison.Ordinal))
            .Select(line => line.Split('\t'))
            .Select(cells => new PlayingLimit(cells[0], Number(cells[1]), Number(cells[2]), cells[3]))];
    }

    private static double? Number(string cell) => cell.Length == 0 ? null : double.Parse(cell, CultureInfo.InvariantCulture);
}

/// <summary>
/// The time a limb needs from one key to another: base + slope log2(1 + d), d in natural keys (a sharp counts half), more
/// when it changes rows or lands on a heavy key. All times are estimates (playing-limits.tsv).
/// </summary>
/// <param name="Base">Seconds for a move to the same or the next place.</param>
/// <param name="PerDoubling">Seconds more for each doubling of 1 + d.</param>
/// <param name="RowChange">Seconds more from natural to sharp or back.</param>
/// <param name="HeavyKey">Seconds more onto a key below written middle C.</param>
internal readonly record struct MoveLaw(double Base, double PerDoubling, double RowChange, double HeavyKey)
{
    private const int MiddleC = 60;

    /// <summary>The time of a move.</summary>
    public Seconds Time(WrittenNote from, WrittenNote to) => new(
        Base
        + (PerDoubling * Math.Log2(1 + NaturalKeys(from, to)))
        + (from.IsSharp == to.IsSharp ? 0 : RowChange)
        + (to.Midi < MiddleC ? HeavyKey : 0));

    /// <summary>No move takes longer: from one end of all notes to the other, with all that is added.</summary>
    public Seconds Longest => new(
        Base + (PerDoubling * Math.Log2(1 + NaturalKeys(WrittenNote.AtMidi(0), WrittenNote.AtMidi(127)))) + RowChange + HeavyKey);

    /// <summary>Natural keys between two places on the keyboard; a sharp lies half-way between its neighbours.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double NaturalKeys(WrittenNote a, WrittenNote b) => Math.Abs(PlaceOf(a) - PlaceOf(b)) / 2.0;

    private static int PlaceOf(WrittenNote note)
    {
        ReadOnlySpan<int> halfKeys = [0, 1, 2, 3, 4, 6, 7, 8, 9, 10, 11, 12];
        return (note.Midi / 12 * 14) + halfKeys[note.Midi % 12];
    }
}
