namespace Revoicer.Audits;

/// <summary>The stages of an audit, in order.</summary>
public enum AuditStage
{
    /// <summary>Working out the tower's tables of roughness and carry.</summary>
    Tables,

    /// <summary>Finding limbs for music that has none.</summary>
    Limbs,

    /// <summary>Adding up the clash of what is struck.</summary>
    Clash,

    /// <summary>Holding it against the limits of playing.</summary>
    Limits,
}
