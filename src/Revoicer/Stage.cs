namespace Revoicer;

/// <summary>The stages of the journey, in order.</summary>
public enum Stage
{
    /// <summary>Cutting the sheet into slots.</summary>
    Slots,

    /// <summary>Working out the tower's tables of roughness and carry.</summary>
    Tables,

    /// <summary>Listing what can be played.</summary>
    Candidates,

    /// <summary>Pricing it.</summary>
    Prices,

    /// <summary>Searching the cheapest.</summary>
    Search,

    /// <summary>Working out the reasons, and checking that all can be played.</summary>
    Reasons,
}
