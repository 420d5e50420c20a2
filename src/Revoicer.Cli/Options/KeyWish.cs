using System.Globalization;
using Revoicer.LeadSheets;
using Revoicer.Music;

namespace Revoicer.Cli.Options;

/// <summary>The key that was asked for: a name, a distance from the sheet's own, or the best.</summary>
internal abstract record KeyWish
{
    /// <summary>The named key.</summary>
    internal sealed record Named(KeySignature Key) : KeyWish;

    /// <summary>So many semitones higher.</summary>
    internal sealed record Higher(int Semitones) : KeyWish;

    /// <summary>The key that suits the tower best.</summary>
    internal sealed record Best : KeyWish;

    /// <summary>Reads what was typed; null where it is none of these.</summary>
    public static KeyWish? Parse(string text)
    {
        const int furthest = 11;
        if (text == "best")
        {
            return new Best();
        }

        var signed = text.Length > 1 && text[0] is '+' or '-';
        if (signed && int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var semitones))
        {
            return Math.Abs(semitones) <= furthest ? new Higher(semitones) : null;
        }

        return KeySignature.TryParse(text, out var key) ? new Named(key) : null;
    }

    /// <summary>
    /// The sheet in that key; null, with a sentence, where it names no key to move from, or one of the other mode. The best key is
    /// found by drafting, so there the sheet stays as it is.
    /// </summary>
    public (LeadSheet? Sheet, string Sentence) Apply(LeadSheet sheet) => (this, sheet.Key) switch
    {
        (Named, null) => (null, "the sheet names no key, so --key cannot tell how far to move it; give semitones, such as --key +2, or name its key in the sheet ('key: C' in a .chords file, 'K:C' in ABC)"),
        (Named { Key: var wanted }, { } own) when wanted.Mode != own.Mode =>
            (null, $"the sheet is in {own}, and --key {wanted} would change its mode; name a {own.Mode.ToString().ToLowerInvariant()} key, such as {own.Moved(2)}"),
        (Named { Key: var wanted }, { } own) => (sheet.Moved(wanted, wanted.Fifths - own.Fifths, Nearest(wanted.Tonic.PitchClass - own.Tonic.PitchClass)), ""),
        (Best, _) => (sheet, ""),
        (Higher { Semitones: var n }, _) => (sheet.Higher(n), ""),
        _ => throw new InvalidOperationException($"no such wish: {this}"),
    };

    // The shorter way up or down; the tune's octave is chosen later.
    private static int Nearest(int semitonesUp) => semitonesUp > 6 ? semitonesUp - 12 : semitonesUp;
}
