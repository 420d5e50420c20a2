using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Chords;

public class ChordSymbolLaws
{
    [Law(Arbitrary = [typeof(ChordGens)], MaxTest = 1000)]
    public void Any_text_ends_in_an_outcome_whose_places_lie_inside_it(SymbolPieces pieces, string? any)
    {
        foreach (var text in new[] { pieces.Text, any ?? "", "C" + any, "(" + pieces.Text + ")" })
        {
            var remarks = SymbolText.Read(text) switch
            {
                Reading<ChordText>.Accepted accepted => accepted.Warnings,
                Reading<ChordText>.Refused refused => refused.Problems,
                _ => throw new InvalidOperationException("no outcome"),
            };
            Assert.All(remarks, r => Assert.InRange(r.Where.Column, 1, text.Length));
            Assert.All(remarks, r => Assert.InRange(r.Where.Column + r.Where.Length - 1, 1, text.Length));
        }
    }

    [Law(Arbitrary = [typeof(ChordGens)], MaxTest = 2000)]
    public void What_an_accepted_symbol_says_of_itself_reads_back_to_the_same_tones(SymbolPieces pieces, GoodSymbol good)
    {
        foreach (var chord in new[] { good.Symbol, ChordGens.Chord("C" + pieces.Text) })
        {
            if (chord is not null)
            {
                Assert.Equal(chord, SymbolText.Chord(chord.ToString()));
            }
        }
    }

    // Names with more than two accidentals are respelled on the way, so there only the sound must come back.
    [Law(Arbitrary = [typeof(ChordGens)])]
    public void Moved_there_and_back_it_is_the_same_chord(GoodSymbol good)
    {
        for (var fifths = -12; fifths <= 12; fifths++)
        {
            var back = good.Symbol.Moved(fifths).Moved(-fifths);
            Assert.Equal(good.Symbol.PitchClasses, back.PitchClasses);
            if (Stays(good.Symbol.Root, fifths) && Stays(good.Symbol.Lowest, fifths))
            {
                Assert.Equal(good.Symbol, back);
            }
        }
    }

    [Law(Arbitrary = [typeof(ChordGens)])]
    public void The_tones_begin_with_the_root_and_climb_by_degree(GoodSymbol good)
    {
        var degrees = good.Symbol.Tones.Select(t => (t.Degree.Number, t.Degree.Alteration)).ToArray();
        Assert.Equal((1, 0), degrees[0]);
        Assert.Equal(degrees.Distinct().Order(), degrees);
        Assert.All(good.Symbol.Tones, t => Assert.Equal(good.Symbol.Root.PitchClass + t.Degree.Semitones, t.PitchClass));
    }

    private static bool Stays(NoteName name, int fifths) => name.FifthsFromC + fifths is >= -15 and <= 19;
}
