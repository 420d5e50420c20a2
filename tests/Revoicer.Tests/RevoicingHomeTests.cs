using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests;

/// <summary>A tune is played where it is at home on the tower: high enough to stand out, low enough to sing. Common practice.</summary>
public sealed class RevoicingHomeTests
{
    private const string High = "X:1\nT:Kelp\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"c e g e | \"F\"a g f e | \"G7\"d f e d | \"C\"c4 |]\n";

    [Fact]
    public void A_tune_stays_at_home_though_an_octave_higher_clashes_less()
    {
        var (home, anywhere) = (Draft(20), Draft(0));

        Assert.All(Tune(home), note => Assert.InRange(note.Midi, 72, 84));
        Assert.Contains(Tune(anywhere), note => note.Midi > 84);
        Assert.True(home.Totals.ClashDose > anywhere.Totals.ClashDose);
    }

    [Fact]
    public void A_tower_says_where_its_tunes_are_at_home()
    {
        Assert.Equal(["C5 C6", "G5 G6", "C5 C6", "C5 C6", "C5 C6"], ShippedTowers.Names.Select(n => ShippedTowers.Named(n).Home).Select(h => $"{h.From} {h.To}"));
        Assert.Equal((3, 0, 2), (ShippedTowers.Default.Home.Outside(WrittenNote.AtMidi(69)), ShippedTowers.Default.Home.Outside(WrittenNote.AtMidi(84)), ShippedTowers.Default.Home.Outside(WrittenNote.AtMidi(86))));
    }

    // On the default tower a third over C3 that is nearer than a tenth lies at E3 or E4 less an octave.
    [Fact]
    public void Over_a_low_bass_the_third_of_the_last_chord_lies_a_tenth_or_more_above()
    {
        foreach (var file in new[] { "fog-on-the-outer-pier.abc", "round-the-breakwater.abc" })
        {
            var last = Draft(file, RepositoryFiles.Text("leadsheets-demo", file), 40).Choices[^1];
            var low = last.Strokes.Min(s => s.Note);
            Assert.True(low.Midi < 60, $"{file} ends without a deep bell");
            Assert.All(last.Strokes.Where(s => (s.Note - low).Semitones is 3 or 4), _ => Assert.Fail($"a low third in {file}"));
        }
    }

    private static IEnumerable<WrittenNote> Tune(Arrangement draft) => draft.Strokes.Where(s => s.IsTune).Select(s => s.Note);

    private static Arrangement Draft(double home) => Draft("kelp.abc", High, home);

    private static Arrangement Draft(string name, string text, double home) => Assert.IsType<Drafting.Made>(Revoicing.Draft(
        RevoicingTests.Read(name, text), ShippedTowers.Default, ShippedSounds.Default with { Home = home }, DraftWish.None, null, CancellationToken.None)).Arrangement;
}
