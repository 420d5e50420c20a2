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

    /// <summary>The limb that the words name; null where they name none.</summary>
    public static Limb? Find(string words) =>
        Enum.GetValues<Limb>().Where(limb => Of(limb) == words).Select(limb => (Limb?)limb).FirstOrDefault();
}
