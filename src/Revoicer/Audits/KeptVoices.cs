namespace Revoicer.Audits;

/// <summary>How many voices music has kept that was voiced anew, over all chords as heard under which something was struck.</summary>
/// <param name="LongChords">Such chords of 0.8 s and more.</param>
/// <param name="Basses">Those of them that have a bass.</param>
/// <param name="InnerAsked">Those under which three voices and more sounded, the tune counted.</param>
/// <param name="InnerTones">Those of the last that have a tone between bass and tune.</param>
/// <param name="Silent">Chords, short ones too, in which nothing is struck any more.</param>
public sealed record KeptVoices(int LongChords, int Basses, int InnerAsked, int InnerTones, int Silent)
{
    /// <summary>Of no chord.</summary>
    public static KeptVoices None { get; } = new(0, 0, 0, 0, 0);

    /// <summary>The sum over two stretches of music.</summary>
    public static KeptVoices operator +(KeptVoices a, KeptVoices b) => new(
        a.LongChords + b.LongChords, a.Basses + b.Basses, a.InnerAsked + b.InnerAsked, a.InnerTones + b.InnerTones, a.Silent + b.Silent);
}
