namespace Revoicer.Bells;

/// <summary>
/// The rows of the playing limits that a tower file may set for itself, and how far: the numbers that ship belong to the
/// room that plays. The highest values are ours: beyond what any hand, bell or keyboard needs, near enough that no file
/// makes the search or the checker look back for minutes.
/// </summary>
internal static class LimitKeys
{
    // Written MIDI notes and distances between them end there.
    private const double Notes = 127;

    // No limb has more keys under it, and no player strikes more bells at once.
    private const double AtOnce = 12;

    // A bell struck again, or a rest after a low one, longer than this is a rest of the piece.
    private const double LongestWait = 10;

    // The parts of a move add up, one of them several times over (seconds).
    private const double LongestPart = 2;

    private const string Semitones = " semitones";
    private const string Seconds = " s";

    /// <summary>The rows, in the order of the table.</summary>
    public static readonly LimitRange[] Ranges =
    [
        new("hand_keys_at_once", AtOnce, " batons"),
        new("hand_pair_again_s", LongestWait, Seconds),
        new("hand_span", Notes, Semitones),
        new("hand_pair_lowest_n", Notes, " (a written MIDI note)"),
        new("hand_lowest_n", Notes, " (a written MIDI note)"),
        new("hands_apart", Notes, Semitones),
        new("hands_crossed", Notes, Semitones),
        new("foot_keys_at_once", AtOnce, " pedals"),
        new("feet_apart", Notes, Semitones),
        new("spans_together", 2 * Notes, Semitones),
        new("recovery_below_48_s", LongestWait, Seconds),
        new("recovery_48_59_s", LongestWait, Seconds),
        new("recovery_60_71_s", LongestWait, Seconds),
        new("recovery_72_83_s", LongestWait, Seconds),
        new("recovery_from_84_s", LongestWait, Seconds),
        new("hand_move_base_s", LongestPart, Seconds),
        new("hand_move_per_doubling_s", LongestPart, Seconds),
        new("foot_move_base_s", LongestPart, Seconds),
        new("foot_move_per_doubling_s", LongestPart, Seconds),
        new("row_change_s", LongestPart, Seconds),
        new("heavy_key_below_n60_s", LongestPart, Seconds),
        new("at_once_s", 1, Seconds),
        new("bells_at_once", AtOnce, " bells"),
        new("heavy_strokes_in_10_s", 100, " strokes"),
        new("heavy_strokes_one_foot_no_rest", 100, " strokes"),
        new("bass_change_below_n60_s", LongestWait, Seconds),
        new("bass_change_60_71_s", LongestWait, Seconds),
        new("low_pedal_high_baton_s", LongestWait, Seconds),
        new("low_close_interval", Notes, Semitones),
    ];

    /// <summary>The names alone.</summary>
    public static readonly string[] All = [.. Ranges.Select(r => r.Key)];
}

/// <summary>One row that a tower file may set.</summary>
/// <param name="Key">Its name.</param>
/// <param name="Highest">The highest value it may have; the lowest is 0.</param>
/// <param name="Unit">Its unit as a message writes it after the number.</param>
internal sealed record LimitRange(string Key, double Highest, string Unit);
