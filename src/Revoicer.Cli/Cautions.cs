namespace Revoicer.Cli;

/// <summary>What a player should know before taking a draft to the tower.</summary>
internal static class Cautions
{
    /// <summary>The cautions in short, as the help shows them.</summary>
    public const string Text =
        "Before you play: the limits of reach and time are defaults, no medical advice; stop if something hurts and have a teacher tune "
        + "them. Bells are loud: protect your ears. Clock hammers and swinging bells start without warning: isolate them before anyone goes "
        + "near. Rehearse on the practice keyboard first. Local rules, and those licensed to say, decide on access and hours.";

    /// <summary>What to know before playing, one a paragraph, in lines of at most 100 characters.</summary>
    public const string Playing = """
        Before you play
        - The limits of reach and time are defaults, not medical advice. Stop if a reach or a repeated
          heavy stroke hurts, and have a teacher tune them.
        - Bells are loud: NIOSH recommends at most 85 dBA over 8 h, halving the time for every 3 dB more.
          Wear protection where there is no closed cabin.
        - Clock hammers and swinging bells start without warning. Isolate them before anyone goes near.
        - Rehearse on the practice keyboard first.
        - Tower access and playing hours follow local rules and those who are licensed to say.
        """;

    /// <summary>The cautions in full, those of recording a stroke among them.</summary>
    public const string Full = Playing + "\n\n" + Recording;

    private const string Recording = """
        Before you record a stroke
        - Switch off clock hammers and swinging bells and lock them out. Set the recorder, and leave the
          bell chamber before anyone strikes. Protect your ears.
        - A measured bell is for choosing notes. It is never a ground for retuning or altering a bell or
          its fittings.
        """;
}
