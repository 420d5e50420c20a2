using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Benchmarks.Sensitivity;

/// <summary>
/// How often chords get other bells where the changed bells come in as a player brings them: as measured partials of every
/// bell in a tower file, for a whole draft, which chooses the tune's octave anew.
/// </summary>
internal static class TowerFileSensitivity
{
    public const int Draws = 8;

    /// <summary>The shares of chords as heard with other bells and with another lowest bell, on the mean of the draws.</summary>
    public static string Cell(LeadSheet sheet, BellDraws draws)
    {
        var plain = Draft(sheet, ShippedTowers.Default);
        var moved = draws.Laws(Draws).Select(law => Draft(sheet, Tower(law)))
            .Select(changed => plain.Choices.Zip(changed.Choices).ToArray())
            .Select(pairs => (
                Bells: pairs.Average(p => Bells(p.First).SequenceEqual(Bells(p.Second)) ? 0.0 : 1),
                Bass: pairs.Average(p => Bass(p.First) == Bass(p.Second) ? 0.0 : 1)))
            .ToArray();
        return string.Create(CultureInfo.InvariantCulture, $"{moved.Average(m => m.Bells):0.00}, bass {moved.Average(m => m.Bass):0.00}");
    }

    private static IEnumerable<WrittenNote> Bells(Choice choice) => choice.Strokes.Select(s => s.Note).Distinct().Order();

    private static WrittenNote? Bass(Choice choice) => choice.Strokes.Where(s => s.IsPedal).Select(s => (WrittenNote?)s.Note).Min();

    private static Arrangement Draft(LeadSheet sheet, Tower tower) =>
        ((Drafting.Made)Revoicing.Draft(sheet, tower, ShippedSounds.Default, DraftWish.None, null, CancellationToken.None)).Arrangement;

    // The default tower's own file with every partial of the changed bells written out; the strongest of a bell has 0 dB.
    private static Tower Tower(BellLaw law)
    {
        var text = new StringBuilder(ShippedTowers.Text(ShippedTowers.DefaultName));
        foreach (var bell in ShippedTowers.Default.Under(law).Bells)
        {
            var strongest = bell.Partials.Max(p => p.Amplitude);
            text.Append(CultureInfo.InvariantCulture, $"\n[[bell]]\nkey = \"{bell.Note}\"\n");
            foreach (var partial in bell.Partials)
            {
                var level = 20 * Math.Log10(partial.Amplitude / strongest);
                text.Append(CultureInfo.InvariantCulture, $"[[bell.partial]]\nname = \"{partial.Name}\"\nhertz = {partial.Frequency.Value:0.0000}\nlevel = {level:0.0000}\nt60 = {partial.Decay.Value:0.00000}\n");
            }
        }

        return TowerFile.Read("changed.toml", text.ToString()) switch
        {
            Reading<Tower>.Accepted accepted => accepted.Value,
            Reading<Tower>.Refused refused => throw new InvalidOperationException(string.Concat(refused.Problems)),
            _ => throw new InvalidOperationException("a reading is accepted or refused"),
        };
    }
}
