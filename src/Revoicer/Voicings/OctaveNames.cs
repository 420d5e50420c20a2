namespace Revoicer.Voicings;

/// <summary>The octave of a tune in words.</summary>
public static class OctaveNames
{
    /// <summary>"in its written octave", "an octave higher than written", "2 octaves lower than written".</summary>
    /// <param name="octaves">By how many octaves it lies higher than written.</param>
    public static string Of(int octaves) => octaves switch
    {
        0 => "in its written octave",
        1 => "an octave higher than written",
        -1 => "an octave lower than written",
        > 1 => $"{octaves} octaves higher than written",
        _ => $"{-octaves} octaves lower than written",
    };
}
