namespace Revoicer.Cli;

/// <summary>What a player should know before taking a draft to the tower.</summary>
internal static class Cautions
{
    /// <summary>The cautions in short, as the help shows them.</summary>
    public const string Text =
        "Before you play: the limits of reach and time are defaults, no medical advice; stop if something hurts and have a teacher tune "
        + "them. Bells are loud: protect your ears. Clock hammers and swinging bells start without warning: isolate them before anyone goes "
        + "near. Rehearse on the practice keyboard first. Local rules, and those licensed to say, decide on access and hours.";
}
