using Revoicer.Playing;

namespace Revoicer.Writing;

/// <summary>The limbs in words, as files and reports have them.</summary>
internal static class LimbWords
{
    /// <summary>"left foot".</summary>
    public static string Of(Limb limb) => limb switch
    {
        Limb.LeftFoot => "left foot",
        Limb.RightFoot => "right foot",
        Limb.LeftHand => "left hand",
        Limb.RightHand => "right hand",
        _ => throw new ArgumentOutOfRangeException(nameof(limb), limb, "no limb"),
    };

    /// <summary>The limb that the words name, or null.</summary>
    public static Limb? Find(string words) =>
        Enum.GetValues<Limb>().Where(l => Of(l) == words).Select(l => (Limb?)l).FirstOrDefault();
}
