using Revoicer.Music;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Writing.Text;

public class KeySpellingTests
{
    // Common practice: flats in flat keys, the raised seventh of G minor as F sharp, B for C flat only where it is in the key.
    [Theory]
    [InlineData("Bb", "A#4 is struck again after 0.30 s (recovery_60_71_s)", "Bb4 is struck again after 0.30 s (recovery_60_71_s)")]
    [InlineData("Gm", "one hand is to span D#4 to F#4", "one hand is to span Eb4 to F#4")]
    [InlineData("E", "play D#3 an octave higher, D#4 with the left foot", "play D#3 an octave higher, D#4 with the left foot")]
    [InlineData("Bb", "leave out C4, A#-1", "leave out C4, Bb-1")]
    [InlineData(null, "leave out A4", "leave out A4")]
    public void Bells_in_a_sentence_are_named_as_the_key_names_them(string? key, string sentence, string expected) =>
        Assert.Equal(expected, new KeySpelling(key is not null && KeySignature.TryParse(key, out var signature) ? signature : null).In(sentence));
}
