namespace Revoicer.Bells;

/// <summary>
/// The rows of the playing limits that a tower file may set for itself: the names alone, since the numbers belong to
/// the room that plays.
/// </summary>
internal static class LimitKeys
{
    public static readonly string[] All =
    [
        "hand_keys_at_once",
        "hand_pair_again_s",
        "hand_span",
        "hand_pair_lowest_n",
        "hand_lowest_n",
        "hands_apart",
        "hands_crossed",
        "foot_keys_at_once",
        "feet_apart",
        "spans_together",
        "recovery_below_48_s",
        "recovery_48_59_s",
        "recovery_60_71_s",
        "recovery_72_83_s",
        "recovery_from_84_s",
        "hand_move_base_s",
        "hand_move_per_doubling_s",
        "foot_move_base_s",
        "foot_move_per_doubling_s",
        "row_change_s",
        "heavy_key_below_n60_s",
        "at_once_s",
        "bells_at_once",
        "heavy_strokes_in_10_s",
        "heavy_strokes_one_foot_no_rest",
        "bass_change_below_n60_s",
        "bass_change_60_71_s",
        "low_pedal_high_baton_s",
        "low_close_interval",
    ];
}
