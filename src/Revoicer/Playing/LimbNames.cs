namespace Revoicer.Playing;

/// <summary>The limbs in words.</summary>
public static class LimbNames
{
    /// <summary>"left hand".</summary>
    public static string Of(Limb limb) => limb switch
    {
        Limb.LeftFoot => "left foot",
        Limb.RightFoot => "right foot",
        Limb.LeftHand => "left hand",
        Limb.RightHand => "right hand",
        _ => throw new ArgumentOutOfRangeException(nameof(limb), limb, "a player has four limbs"),
    };
}
