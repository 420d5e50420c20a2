using Revoicer.Comparisons;

namespace Revoicer.Writing.Text;

/// <summary>The measures of a comparison as a player reads them.</summary>
internal static class MeasureWords
{
    /// <summary>The heading of its column.</summary>
    public static string[] Heading(Measure measure) => measure.Name switch
    {
        Measure.ClashDose => ["clash", "dose "],
        "medianClash" => ["median", "clash "],
        Measure.Worst => ["worst ", ""],
        "carry" => ["carry as", "struck "],
        "carryAtEqualTouch" => ["at equal", "touch "],
        "brightness" => ["bright-", "ness "],
        "effort" => ["effort "],
        "rolls" => ["rolls "],
        "inversions" => ["inver-", "sions "],
        "tenthsAndWider" => ["tenths", "and wider "],
        Measure.StrongBeats => ["strong beats", "with a bass "],
        "strokes" => ["strokes "],
        "silentChords" => ["chords with", "no stroke "],
        "singleStrokes" => ["", "one "],
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure.Name, "no such measure"),
    };

    /// <summary>What stands behind its numbers.</summary>
    public static string Unit(Measure measure) => measure.Name switch
    {
        "carry" or "carryAtEqualTouch" => " dB",
        "brightness" => " Hz",
        "tenthsAndWider" or Measure.StrongBeats => " %",
        _ => "",
    };
}
