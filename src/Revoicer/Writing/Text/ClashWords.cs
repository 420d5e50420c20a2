using Revoicer.Arrangements;

namespace Revoicer.Writing.Text;

/// <summary>
/// Clash figures in words. Everywhere the figure is the one without the clash of the tune with itself, which no voicing
/// changes; where that adds something, the figure with it stands beside.
/// </summary>
internal static class ClashWords
{
    /// <summary>"20.3"; "41.8 (127.2 with the tune's own)".</summary>
    public static string Of(ClashSplit clash) => Of(clash.Avoidable, clash.Whole);

    /// <summary>The same for a figure of several chords.</summary>
    /// <param name="without">Without the tune's own.</param>
    /// <param name="with">With it.</param>
    public static string Of(double without, double with)
    {
        var (figure, whole) = (Sentences.Figure(without), Sentences.Figure(with));
        return figure == whole ? figure : $"{figure} ({whole} with the tune's own)";
    }

    /// <summary>The figure and what the whole is made of: "82.5, 50.0 roughness and 32.5 contradiction".</summary>
    public static string InParts(ClashSplit clash)
    {
        var (figure, whole) = (Sentences.Figure(clash.Avoidable), Sentences.Figure(clash.Whole));
        var parts = Parts(clash);
        return figure == whole ? figure + parts : $"{figure}; with the tune's own {whole}{parts}";
    }

    // What rounds to nothing is left to the JSON.
    private static string Parts(ClashSplit clash) => (Sentences.Figure(clash.Roughness), Sentences.Figure(clash.Contradiction)) switch
    {
        ("0.0", "0.0") => "",
        (_, "0.0") => ", all roughness",
        ("0.0", _) => ", all contradiction",
        var (rough, contrary) => $", {rough} roughness and {contrary} contradiction",
    };
}
