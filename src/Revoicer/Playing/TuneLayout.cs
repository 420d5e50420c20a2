namespace Revoicer.Playing;

/// <summary>Where the tune lies to the chords.</summary>
public enum TuneLayout
{
    /// <summary>In the hands, over the chords.</summary>
    Above,

    /// <summary>In the pedals and the low manual, under the chords.</summary>
    Below,
}

/// <summary>The layouts in words.</summary>
public static class TuneLayoutNames
{
    /// <summary>"above", "below".</summary>
    public static string Of(TuneLayout layout) => layout switch
    {
        TuneLayout.Above => "above",
        TuneLayout.Below => "below",
        _ => throw new ArgumentOutOfRangeException(nameof(layout), layout, "the tune lies above or below"),
    };

    /// <summary>The layout that a word names; null where it names none.</summary>
    public static TuneLayout? Find(string word) =>
        Enum.GetValues<TuneLayout>().Where(layout => Of(layout) == word).Select(layout => (TuneLayout?)layout).FirstOrDefault();
}
