using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.Music;

/// <summary>The circle of fifths (common practice).</summary>
public sealed class KeySignatureTests
{
    [Theory]
    [InlineData("C", "C major", 0)]
    [InlineData("a", "A major", 3)]
    [InlineData("Bb", "Bb major", -2)]
    [InlineData("bb minor", "Bb minor", -5)]
    [InlineData(" F# minor ", "F# minor", 3)]
    [InlineData("F\u266Fm", "F# minor", 3)]
    [InlineData("E\u266D MAJOR", "Eb major", -3)]
    [InlineData("Am", "A minor", 0)]
    [InlineData("Cb", "Cb major", -7)]
    [InlineData("C#", "C# major", 7)]
    [InlineData("Ab minor", "Ab minor", -7)]
    [InlineData("A# minor", "A# minor", 7)]
    [InlineData("d dorian", "D dorian", 0)]
    [InlineData("D Mixolydian", "D mixolydian", 1)]
    [InlineData("F lydian", "F lydian", 0)]
    [InlineData("E phrygian", "E phrygian", 0)]
    [InlineData("B locrian", "B locrian", 0)]
    public void Keys_are_read_as_people_write_them(string text, string name, int fifths)
    {
        Assert.True(KeySignature.TryParse(text, out var key));
        Assert.Equal((name, fifths), (key.ToString(), key.Fifths));
    }

    [Theory]
    [InlineData("C", "0 2 4 5 7 9 11")]
    [InlineData("D dorian", "0 2 4 5 7 9 11")]
    [InlineData("A minor", "0 2 4 5 7 9 11")]
    [InlineData("Eb", "0 2 3 5 7 8 10")]
    [InlineData("E", "1 3 4 6 8 9 11")]
    public void A_key_has_the_seven_tones_of_its_signature(string name, string tones)
    {
        Assert.True(KeySignature.TryParse(name, out var key));
        Assert.Equal(tones, string.Join(' ', Enumerable.Range(0, 12).Where(tone => key.Scale.Contains(PitchClass.Of(tone)))));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("H")]
    [InlineData("1")]
    [InlineData("C mixed")]
    [InlineData("C 1")]
    [InlineData("Fb dorian")]
    [InlineData("CM")]
    [InlineData("G#")]
    [InlineData("Fb")]
    [InlineData("C#b")]
    [InlineData("Db minor")]
    [InlineData("C#######################")]
    public void What_is_no_key_in_use_is_not_read(string text) => Assert.False(KeySignature.TryParse(text, out _));

    [Law]
    public bool Any_text_is_a_key_or_not(string text) =>
        !KeySignature.TryParse(text ?? "", out var key) || Math.Abs(key.Fifths) <= 7;

    [Theory]
    [InlineData("C", 2, "D major")]
    [InlineData("C", -2, "Bb major")]
    [InlineData("C", 6, "Gb major")]
    [InlineData("A minor", 6, "Eb minor")]
    [InlineData("G", 4, "B major")]
    [InlineData("E minor", 4, "G# minor")]
    [InlineData("F#", 0, "Gb major")]
    [InlineData("C#", 12, "Db major")]
    public void A_moved_key_has_the_fewest_accidentals_and_at_six_the_flats(string text, int semitones, string moved)
    {
        Assert.True(KeySignature.TryParse(text, out var key));
        Assert.Equal(moved, key.Moved(semitones).ToString());
    }

    [Law]
    public Property Moving_a_key_moves_its_keynote_and_keeps_its_mode()
    {
        var keys =
            from fifths in Gen.Choose(-7, 7)
            from mode in Gen.Elements(Enum.GetValues<Mode>())
            from semitones in Gen.Choose(-30, 30)
            select (Key: new KeySignature(NoteName.AtFifths(fifths), mode), semitones);
        return Prop.ForAll(keys.ToArbitrary(), given =>
        {
            var moved = given.Key.Moved(given.semitones);
            return moved.Mode == given.Key.Mode
                && moved.Fifths is >= -6 and <= 5
                && moved.Tonic.PitchClass == given.Key.Tonic.PitchClass + given.semitones;
        });
    }
}
