namespace Revoicer.Pictures;

/// <summary>What comes of drawing a picture.</summary>
public abstract record Drawing
{
    private Drawing()
    {
    }

    /// <summary>It is drawn.</summary>
    /// <param name="Picture">The picture.</param>
    public sealed record Made(Picture Picture) : Drawing;

    /// <summary>The machine has no font to letter it with; a picture without words would tell nothing.</summary>
    /// <param name="Reason">What is missing and what helps, as a sentence.</param>
    public sealed record NoFont(string Reason) : Drawing;
}
