namespace Revoicer.Comparisons;

/// <summary>Which way a figure is better.</summary>
public enum Better
{
    /// <summary>A matter of taste.</summary>
    Neither,

    /// <summary>The less the better.</summary>
    Less,

    /// <summary>The more the better.</summary>
    More,
}
