namespace Revoicer.LeadSheets.Harmony;

/// <summary>
/// What speaks against a chord, in thousandths of the price of one tone outside it that sounds for a beat. All are estimates,
/// set by eye on hymns in four voices and on the program's own drafts; the idea, templates and a price for change along the
/// metre, is that of Temperley, The Cognition of Basic Musical Structures (MIT Press 2001), from memory.
/// </summary>
internal static class ChordPrices
{
    /// <summary>A tone outside the chord, for each beat that it sounds.</summary>
    public const long Foreign = 1000;

    /// <summary>Of that price, what a note costs that is struck on a weak beat.</summary>
    public const double ForeignOnBeat = 0.7;

    /// <summary>Of that price, what a note costs that is struck between two beats: mostly it passes by.</summary>
    public const double ForeignOffBeat = 0.35;

    /// <summary>A tone of the chord but its perfect fifth, for each beat in which others sound together before it first does.</summary>
    public const double Late = 0.25;

    /// <summary>A chord whose root does not sound.</summary>
    public const long NoRoot = 1500;

    /// <summary>A tone that makes the chord what it is (third, seventh, altered fifth) and does not sound.</summary>
    public const long NoGuide = 800;

    /// <summary>A perfect fifth that does not sound.</summary>
    public const long NoFifth = 100;

    /// <summary>The third in the bass.</summary>
    public const long BassThird = 150;

    /// <summary>Another tone of the chord but the root in the bass.</summary>
    public const long BassOther = 300;

    /// <summary>A bass outside the chord, as over a pedal point.</summary>
    public const long BassForeign = 2000;

    /// <summary>On each beat within a chord a bass other than the one with which it began.</summary>
    public const long BassMoves = 300;

    /// <summary>Another chord on a strong beat.</summary>
    public const long ChangeOnStrong = 250;

    /// <summary>Another chord on another beat.</summary>
    public const long ChangeOnBeat = 350;

    /// <summary>Another chord between two beats.</summary>
    public const long ChangeOffBeat = 1200;

    /// <summary>Of the price of another chord, what it costs where the root stays: another bass, or another chord on it.</summary>
    public const double SameRoot = 0.5;

    /// <summary>To call a stretch unclear.</summary>
    public const long Unclear = 1000;

    /// <summary>Each beat that sounds and stays unclear.</summary>
    public const long UnclearBeat = 700;
}
