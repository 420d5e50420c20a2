using Revoicer.Arrangements;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Writing.Text;

/// <summary>Tells in which octave a tune lies, and what the others would have cost.</summary>
public static class OctaveWords
{
    /// <summary>The octaves in which it does not lie, a sentence each; empty where none is known of.</summary>
    public static string Of(Items<OtherOctave> others) => string.Join(' ', others.Select(Sentence));

    private static string Sentence(OtherOctave other) => Sentences.Capital(OctaveNames.Of(other.Octaves)) + other switch
    {
        { CostsMore: null } => " no voicing keeps every rule.",
        { CostsMore: { } less, IsExact: false } when less < 0 => $" the draft may cost less, by {Sentences.Price(-less)} at most.",
        { CostsMore: { } less } when less < 0 => $" the draft would cost {Sentences.Price(-less)} less.",
        { CostsMore: { } more, IsExact: false } => $" the draft would cost at least {Sentences.Price(more)} more.",
        { CostsMore: { } more } => $" the draft would cost {Sentences.Price(more)} more.",
    };
}
