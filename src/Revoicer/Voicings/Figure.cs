using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>When the strokes of a slot fall.</summary>
public enum Figure
{
    /// <summary>Nothing is struck.</summary>
    Silent,

    /// <summary>All on the beat.</summary>
    Together,

    /// <summary>Upward one shortly after another, the last on the beat; downward where the tune lies below.</summary>
    Rolled,

    /// <summary>The bass on the beat, the rest on the next beat; not in a slot of one beat, but for the last chord, where it comes half-way.</summary>
    BassFirst,

    /// <summary>The bass on the strong beat, the hands on the weak beats that follow.</summary>
    Afterbeats,

    /// <summary>Upward one tone after another, a beat each. Tones of one hand may lie wider than a grip.</summary>
    Broken,

    /// <summary>The bass moves with the tune a tenth or a seventeenth below it, note for note; the hands strike with its first.</summary>
    InTenths,

    /// <summary>What stood there before, its strokes when it had them.</summary>
    AsItWas,
}

/// <summary>The figures in words.</summary>
public static class FigureNames
{
    /// <summary>All names, in the order of the figures.</summary>
    public static Items<string> All { get; } = Figures.All.Select(row => row.Name).ToItems();

    /// <summary>"bass first".</summary>
    public static string Of(Figure figure) => Figures.Of(figure).Name;
}
