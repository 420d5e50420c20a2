using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.Playing;
using Revoicer.Tests.Prices;
using Xunit;

namespace Revoicer.Tests.Comparisons;

public sealed class KeyFitTests
{
    // The shipped tower of 47 bells has no C#3 and no D#3, as many have (common practice); its pedals go from C3 to G4.
    [Fact]
    public void Basses_on_missing_bells_are_counted_as_often_as_they_are_heard()
    {
        var sheet = SmallSheets.Sheet(["Eb", "Bb", "Db/F G/D#"], [0, 1, 0, 1, 2]);
        Assert.Equal(new KeyFit(null, 6, 6, 3), KeyFit.Of(sheet, ShippedTowers.Default, [TuneLayout.Above]));
    }

    // Pedals of the eight bells: C3, G3 and C4.
    [Fact]
    public void A_bass_without_a_pedal_in_any_octave_is_counted() => Assert.Equal(
        new KeyFit(null, 4, 3, 1), KeyFit.Of(SmallSheets.Sheet(["C G", "D/G D"]), SmallSheets.EightBells, [TuneLayout.Above]));

    [Fact]
    public void A_tune_fits_in_the_octaves_in_which_it_has_all_its_bells()
    {
        // G4 alone, on a tower from C3 to C7: as written, an octave lower and up to two higher.
        var sheet = RevoicingTests.Read("one.abc", "X:1\nT:One\nM:4/4\nL:1/1\nK:C\n\"C\"G |]\n");
        var fit = KeyFit.Of(sheet, ShippedTowers.Default, [TuneLayout.Above]);
        Assert.Equal(4, fit.Tune);
        Assert.True(fit.TuneFits);

        // Four octaves and a tone: in no key.
        var wide = RevoicingTests.Read("wide.abc", "X:1\nT:Wide\nM:4/4\nL:1/1\nK:C\n\"C\"C, | d'' |]\n");
        Assert.False(KeyFit.Of(wide, ShippedTowers.Default, [TuneLayout.Above]).TuneFits);
    }
}
