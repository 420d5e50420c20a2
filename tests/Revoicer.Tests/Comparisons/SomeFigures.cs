using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Music;
using Revoicer.Tests.Writing;
using Revoicer.Values;

namespace Revoicer.Tests.Comparisons;

/// <summary>Figures made by hand, to rank and to mark.</summary>
internal static class SomeFigures
{
    public static SettingFigures Figures { get; } = SettingFigures.Of(SampleArrangements.HarbourLights);

    /// <summary>A setting with a draft at a price, in a key so many semitones above C major.</summary>
    public static ComparedSetting At(int semitones, double price, int withPedal = 10) =>
        new(
            new Setting("Slipway", "balanced", semitones, new KeySignature(new NoteName(Letter.C), Mode.Major).Moved(semitones), null),
            new KeyFit(null, 10, withPedal, 0),
            new Drafting.Made(SampleArrangements.HarbourLights))
        {
            Figures = Figures with { Price = (long)(1000 * price) },
        };

    /// <summary>A setting in which nothing can be played.</summary>
    public static ComparedSetting Unplayable(int semitones) =>
        At(semitones, 0) with { Figures = null, Drafting = new Drafting.Unplayable(["the tune fits nowhere"]) };

    public static Items<ComparedSetting> Keys(params (int Semitones, double Price)[] keys) => keys.Select(k => At(k.Semitones, k.Price)).ToItems();
}
