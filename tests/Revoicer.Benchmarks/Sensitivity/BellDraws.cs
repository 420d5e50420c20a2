using Revoicer.Bells;
using Revoicer.Values;

namespace Revoicer.Benchmarks.Sensitivity;

/// <summary>
/// What is not known of the default bell, as draws with a fixed seed: levels good to about 5 dB, the hum's decay to 40 %, the
/// other decays to a factor of 2, the tierce between 1.189 and 1.205 of the strike frequency.
/// </summary>
/// <param name="Letter">How tables call it.</param>
/// <param name="Words">What is drawn.</param>
/// <param name="LevelPerPartial">Whether each partial's level is shifted alike in all registers.</param>
/// <param name="LevelPerRegister">Whether each partial's level is shifted in every register by itself.</param>
/// <param name="Decays">Whether decays are drawn.</param>
/// <param name="Tierce">Whether the tierce's pitch is drawn.</param>
internal sealed record BellDraws(char Letter, string Words, bool LevelPerPartial, bool LevelPerRegister, bool Decays, bool Tierce)
{
    private const int Seed = 20261125;
    private const double LevelDeviation = 5;
    private const double HumWithin = 1.4;
    private const double OthersWithin = 2;
    private const double TierceFrom = 1.189;
    private const double TierceTo = 1.205;

    public static BellDraws[] All { get; } =
    [
        new('A', "levels, alike in all registers", true, false, false, false),
        new('B', "levels, each register by itself", false, true, false, false),
        new('C', "decays", false, false, true, false),
        new('D', "the tierce's pitch", false, false, false, true),
        new('E', "all, levels alike in all registers", true, false, true, true),
        new('F', "all, levels of each register by themselves", false, true, true, true),
    ];

    /// <summary>So many changed laws, the same ones each time.</summary>
    public IEnumerable<BellLaw> Laws(int count)
    {
        var random = new Random(Seed);
        var partials = BellLaw.Default.PartialNames.Count();
        for (var i = 0; i < count; i++)
        {
            yield return BellLaw.Default.Changed(new LawChange(
                Enumerable.Range(0, partials).Select(_ => Levels(random)).ToItems(),
                Enumerable.Range(0, partials).Select(p => Decays ? Factor(random, p == 0 ? HumWithin : OthersWithin) : 1).ToItems(),
                Tierce ? TierceFrom + (random.NextDouble() * (TierceTo - TierceFrom)) : null));
        }
    }

    private Items<double> Levels(Random random)
    {
        var alike = LevelPerPartial ? Normal(random) : 0;
        return Enumerable.Range(0, BellLaw.Registers).Select(_ => LevelPerRegister ? Normal(random) : alike).ToItems();
    }

    // Box and Muller 1958.
    private static double Normal(Random random) =>
        LevelDeviation * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    // Evenly on a logarithmic scale between 1 / within and within.
    private static double Factor(Random random, double within) => Math.Pow(within, (2 * random.NextDouble()) - 1);
}
