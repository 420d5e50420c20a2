using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>A key as a tune states it.</summary>
/// <param name="Named">The key by name; null where the tune names no keynote.</param>
/// <param name="Alterations">Semitones added to each of the seven letters, in the order of <see cref="Letter"/>.</param>
internal sealed record KeyAlterations(KeySignature? Named, Items<int> Alterations)
{
    /// <summary>No sharps, no flats, no keynote.</summary>
    public static KeyAlterations None { get; } = new(null, [0, 0, 0, 0, 0, 0, 0]);

    /// <summary>The key of a signature.</summary>
    /// <param name="named">What it is called.</param>
    /// <param name="fifths">Its sharps, or flats if negative; -7..7.</param>
    public static KeyAlterations Of(KeySignature? named, int fifths)
    {
        var alterations = new int[7];
        for (var i = 0; i < Math.Abs(fifths); i++)
        {
            // Sharps come in the order F C G D A E B, flats the other way round.
            var name = NoteName.AtFifths(fifths > 0 ? i - 1 : 5 - i);
            alterations[(int)name.Letter] = Math.Sign(fifths);
        }

        return new KeyAlterations(named, Items.Of<int>(alterations));
    }

    /// <summary>The key with one letter altered otherwise.</summary>
    public KeyAlterations With(Letter letter, int alteration) =>
        this with { Alterations = Alterations.Select((a, i) => i == (int)letter ? alteration : a).ToItems() };
}
