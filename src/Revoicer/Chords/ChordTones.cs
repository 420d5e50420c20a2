using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Chords;

/// <summary>Gives the degrees of a chord their names and roles.</summary>
internal static class ChordTones
{
    /// <summary>The tones on a root, in order of degree.</summary>
    /// <param name="root">The root.</param>
    /// <param name="degrees">The degrees, the first among them; no two alike.</param>
    public static Items<ChordTone> Of(NoteName root, IEnumerable<Degree> degrees)
    {
        var ordered = degrees.OrderBy(d => d.Number).ThenBy(d => d.Alteration).ToArray();
        var hasThird = ordered.Any(d => d.Number is 3 or 10);
        return ordered
            .Select(d => new ChordTone(d, root.Above(d.Number - 1, d.Semitones), RoleOf(d, hasThird)))
            .ToItems();
    }

    private static ToneRole RoleOf(Degree degree, bool hasThird) => degree.Number switch
    {
        1 => ToneRole.Root,
        3 or 10 or 7 => ToneRole.Guide,

        // What stands in the place of a third that is not there: suspended tones, the eleventh of an eleventh chord.
        2 or 4 or 11 when !hasThird => ToneRole.Guide,

        // Any other alteration is one the symbol names.
        _ => degree.Alteration != 0 ? ToneRole.Guide : ToneRole.Colour,
    };
}
