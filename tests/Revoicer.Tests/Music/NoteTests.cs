using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Music;
using Xunit;

namespace Revoicer.Tests.Music;

[Properties(Arbitrary = [typeof(MusicGens)])]
public sealed class NoteTests
{
    [Fact]
    public void Raised_batons_are_the_sharps()
    {
        // ISO 16 and every keyboard: the raised row is C#, D#, F#, G#, A#.
        var octave = Enumerable.Range(60, 12).Select(WrittenNote.AtMidi).ToArray();
        Assert.Equal("C#4 D#4 F#4 G#4 A#4", string.Join(' ', octave.Where(n => n.IsSharp)));
        Assert.All(Enumerable.Range(0, 128), midi =>
            Assert.Equal(WrittenNote.AtMidi(midi).ToString().Contains('#'), WrittenNote.AtMidi(midi).IsSharp));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(128)]
    public void A_number_that_is_no_note_is_told_with_its_value(int midi)
    {
        Assert.Equal(midi, Assert.Throws<ArgumentOutOfRangeException>(() => WrittenNote.AtMidi(midi)).ActualValue);
        Assert.Equal(midi, Assert.Throws<ArgumentOutOfRangeException>(() => StrikeNote.AtMidi(midi)).ActualValue);
    }

    [Fact]
    public void A_concert_pitch_instrument_sounds_an_octave_above_written()
    {
        // ../shared/design/1: written C (MIDI 48) strikes at 262 Hz (MIDI 60, C4).
        Assert.Equal("C4", (WrittenNote.AtMidi(48) + new Transposition(12)).ToString());
        Assert.Equal("C3", WrittenNote.AtMidi(48).ToString());
    }

    [Law]
    public bool A_name_moved_by_fifths_sounds_so_many_fifths_higher(NoteName name, int fifths)
    {
        var steps = fifths % 30;
        var moved = name.Moved(steps);
        return moved.PitchClass == name.PitchClass + (7 * steps) && moved.Alteration is >= -2 and <= 2;
    }

    [Law]
    public bool A_name_moved_there_and_back_is_itself_where_no_spelling_was_needed(NoteName name, int fifths)
    {
        var steps = fifths % 30;
        var there = name.Moved(steps);
        var back = there.Moved(-steps);
        var wasRespelled = there.FifthsFromC != name.FifthsFromC + steps;
        return wasRespelled ? back.PitchClass == name.PitchClass : back == name;
    }

    [Law]
    public bool The_place_on_the_line_of_fifths_and_the_name_are_one(NoteName name) =>
        NoteName.AtFifths(name.FifthsFromC) == name;

    [Theory]
    [InlineData(Letter.C, 0, 2, 3, "Eb")]
    [InlineData(Letter.C, 0, 2, 4, "E")]
    [InlineData(Letter.F, 0, 3, 6, "B")]
    [InlineData(Letter.B, 0, 4, 7, "F#")]
    [InlineData(Letter.B, -1, 4, 7, "F")]
    [InlineData(Letter.E, -1, 6, 10, "Db")]
    [InlineData(Letter.G, 1, 2, 4, "B#")]
    [InlineData(Letter.A, 0, 8, 13, "Bb")]
    [InlineData(Letter.C, 0, 12, 21, "A")]
    public void Intervals_are_spelled_by_their_letters(Letter letter, int alteration, int letters, int semitones, string spelled) =>
        Assert.Equal(spelled, new NoteName(letter, alteration).Above(letters, semitones).ToString());

    [Law]
    public Property The_name_above_sounds_so_many_semitones_higher_and_has_its_letter()
    {
        var steps =
            from name in MusicGens.Names().Generator
            from letters in Gen.Choose(0, 14)
            from semitones in Gen.Choose(0, 24)
            select (name, letters, semitones);
        return Prop.ForAll(steps.ToArbitrary(), given =>
        {
            var above = given.name.Above(given.letters, given.semitones);
            return above.PitchClass == given.name.PitchClass + given.semitones
                && (int)above.Letter == ((int)given.name.Letter + given.letters) % 7;
        });
    }

    [Law]
    public bool Pitch_classes_go_round_in_twelve(int semitones, int more) =>
        PitchClass.Of(semitones % 1000) + (more % 1000) == PitchClass.Of((semitones % 1000) + (more % 1000))
        && PitchClass.Of(semitones).Value is >= 0 and <= 11;
}
