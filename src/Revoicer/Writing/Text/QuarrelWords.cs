using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.Text;

/// <summary>Tells which partials beat against each other.</summary>
internal sealed class QuarrelWords(Arrangement arrangement)
{
    private readonly KeySpelling _written = new(arrangement.WrittenKey);
    private readonly KeySpelling _sounding = new(arrangement.SoundingKey);

    /// <summary>"the tierce of C3 against the prime of E4".</summary>
    public string InShort(Quarrel quarrel) =>
        $"the {quarrel.LowerPartial} of {_written.Of(quarrel.Lower)} against the {quarrel.UpperPartial} of {_written.Of(quarrel.Upper)}";

    /// <summary>
    /// "the tierce of C3 (strikes C4), 313 Hz, against the prime of E3 (strikes E4), 330 Hz, for 1.4 s: 41 % of the
    /// roughness".
    /// </summary>
    public string InFull(Quarrel quarrel) => string.Create(
        CultureInfo.InvariantCulture,
        $"the {quarrel.LowerPartial} of {Bell(quarrel.Lower)}, {quarrel.LowerFrequency}, against the {quarrel.UpperPartial} of {Bell(quarrel.Upper)}, {quarrel.UpperFrequency}, {Time(quarrel)}: {100 * quarrel.Share:0} % of the roughness");

    // One of them is faint from its stroke on, or both rang on into the chord and one has fallen below what counts as heard.
    private static string Time(Quarrel quarrel) => quarrel.Lasts.Value < 0.05
        ? "fading"
        : string.Create(CultureInfo.InvariantCulture, $"for {quarrel.Lasts.Value:0.0} s");

    private string Bell(WrittenNote note) =>
        $"{_written.Of(note)} (strikes {_sounding.Of(note + arrangement.Tower.Transposition)})";
}
