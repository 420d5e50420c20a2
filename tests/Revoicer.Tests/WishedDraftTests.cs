using System.Globalization;
using System.Text.RegularExpressions;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Tests.Solving;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests;

/// <summary>Whole drafts under wishes; what is kept is told from their strokes.</summary>
public sealed partial class WishedDraftTests
{
    private const string Quick = "title: Quick Steps\nkey: C\ntime: 4/4\ntempo: 300\n| C C/E C G | C / G / | C G C / |]\n";

    private static LeadSheet Waltz { get; } = Sheet("ferry-waltz.chords");

    [Fact]
    public void The_demos_wishes_are_kept_in_its_strokes()
    {
        var text = File.ReadAllText(Demo("ferry-waltz.wishes.toml"));
        var wishes = Assert.IsType<Reading<PlayerWishes>.Accepted>(WishFile.Read("ferry-waltz.wishes.toml", text, FigureNames.All)).Value;
        var made = Made(Draft(Waltz, DraftWish.None with { Wishes = wishes }));

        Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Strokes));
        Assert.Equal(wishes.All.Select(w => w.Words), made.Wishes.Take(wishes.All.Count));
        Assert.Equal("B3", At(3, 1).Strokes.First(s => s.IsPedal).Note.ToString());
        Assert.Equal("together", At(3, 1).Figure);
        Assert.Equal(new NoteName(Letter.B, -1).PitchClass, At(10, 2).Strokes.Min(s => s.Note).PitchClass);
        Assert.DoesNotContain(At(20, 1).Strokes, s => s.Note == WrittenNote.AtMidi(54));
        Assert.DoesNotContain(made.Choices, c => c.Bar is >= 17 and <= 24 && c.Figure == "rolled");
        Assert.All(made.Choices.Where(c => c.Bar is 29 or 30), c => Assert.Empty(c.Strokes));
        Assert.Equal("G3 D5 B5", string.Join(" ", At(32, 1).Strokes.Select(s => s.Note)));

        Choice At(int bar, double beat) => made.Choices.Single(c => c.Bar == bar && c.Beat == beat);
    }

    // A third that is left out, or a fifth alone over the bass, is a matter of taste. The player may have it.
    [Theory]
    [InlineData("[[pin]]; bar = 1; bells = [\"G3\", \"D5\"]", "G3 D5", "bar 1 beat 1, G: without B, as you wish")]
    [InlineData("[[pin]]; bar = 3; bells = [\"B3\", \"F#4\"]; [[pin]]; bar = 3; figure = \"together\"", "B3 F#4", "bar 3 beat 1, B7: without D# and A, as you wish")]
    [InlineData("[[pin]]; bar = 1; bells = [\"B4\"]", "B4", "bar 1 beat 1, G: with fewer different tones than asked for, as you wish")]
    [InlineData("[[pin]]; bar = 11; bells = [\"A3\", \"C5\"]", "A3 C5", "bar 11 beat 1, Am7: without G (unless it rings on from the chord before), as you wish")]
    public void Bells_that_leave_out_a_tone_are_taken_where_the_player_asks_for_them(string wish, string bells, string note)
    {
        var made = Made(Draft(Waltz, DraftWish.None with { Wishes = Wished.Of(wish) }));
        var bar = Wished.Of(wish).All[0].At.FromBar;

        Assert.Empty(new Checker(ShippedTowers.Default).Check(made.Strokes));
        Assert.Equal(bells, string.Join(" ", made.Choices.First(c => c.Bar == bar).Strokes.Select(s => s.Note).Order()));
        Assert.Contains(note, made.Totals.LeftOut);
    }

    [Fact]
    public void Phrases_begin_where_the_player_says()
    {
        int[] Begins(string wishes) =>
            [.. SlotCutting.Cut(Waltz, TempoMap.Steady(Waltz.Tempo!.Value), null, new CutWish(Wished.Of(wishes).Phrases.Select(p => p.Bar).ToItems(), false))
                .Slots.Where(s => s.BeginsPhrase).Select(s => s.Bar)];

        Assert.Equal([0, 5, 9, 13, 17, 21, 25, 29], Begins(""));
        Assert.Equal([0, 7, 20], Begins("[[phrase]]; bar = 20; [[phrase]]; bar = 7"));
        Assert.Equal([0], Begins("[[phrase]]; bar = 0"));
    }

    [Fact]
    public void Other_answers_differ_from_all_before_in_a_quarter_of_the_chords_and_are_no_cheaper()
    {
        // 18 written chords, each heard once.
        var sheet = Sheet("fog-on-the-outer-pier.abc");
        Arrangement[] made = [.. Enumerable.Range(0, 3).Select(n => Made(Draft(sheet, DraftWish.None with { Another = n })))];
        for (var later = 1; later < made.Length; later++)
        {
            Assert.True(made[later].Totals.Price >= made[0].Totals.Price);
            Assert.All(made[..later], before =>
                Assert.InRange(before.Choices.Zip(made[later].Choices).Count(c => !Bells(c.First).SetEquals(Bells(c.Second))), 5, 18));
        }

        Assert.Equal(["another answer, number 2: other bells than in each answer before it in a quarter of the written chords"], made[2].Wishes);
    }

    [Theory]
    [InlineData("lamps-on-the-quay.chords")]
    [InlineData("round-the-breakwater.abc")]
    public void What_is_repeated_differs_where_it_is_heard_again_and_nowhere_else(string file)
    {
        var plain = DemoDrafts.Of(file);
        var varied = Made(Draft(Sheet(file), DraftWish.None with { VaryRepeats = true }));

        Assert.Empty(new Checker(ShippedTowers.Default).Check(varied.Strokes));
        Assert.All(plain.Choices.Zip(varied.Choices).Where(c => c.First.Pass == 1), c =>
            Assert.Equal(c.First.Strokes.Select(s => (s.Note, s.Limb, s.Beat)), c.Second.Strokes.Select(s => (s.Note, s.Limb, s.Beat))));
        var first = varied.Choices.Where(c => c.Pass == 1).ToDictionary(c => (c.Bar, c.Beat));
        var again = varied.Choices.Where(c => c.Pass > 1).ToArray();
        Assert.NotEmpty(again);
        Assert.Contains(again, c => !Bells(c).SetEquals(Bells(first[(c.Bar, c.Beat)])));
        Assert.Equal(["what is repeated has other bells in at least one chord of each passage"], varied.Wishes);
    }

    [Fact]
    public void A_sheet_without_repeats_has_nothing_to_vary()
    {
        var plain = DemoDrafts.Of("ferry-waltz.chords");
        var varied = Made(Draft(Waltz, DraftWish.None with { VaryRepeats = true }));

        Assert.Equal(plain with { Wishes = varied.Wishes }, varied);
        Assert.Equal(["repeats that are not alike, but nothing in this sheet is heard twice"], varied.Wishes);
    }

    // The tempo that the program names does, and one beat a minute more does not.
    [Theory]
    [InlineData("[[pin]]; bar = 1; beat = 1; bells = [\"C3\", \"E5\"]; [[pin]]; bar = 1; beat = 3; bass = \"C3\"")]
    [InlineData("[[pin]]; bar = 1; beat = 4; figure = \"rolled\"")]
    [InlineData("[[pin]]; bar = 1; beat = 1; bass = \"C3\"; [[pin]]; bar = 1; beat = 2; bass = \"E3\"")]
    public void The_tempo_that_is_named_does_and_a_faster_one_does_not(string wishes)
    {
        var sheet = RevoicingTests.Read("quick.chords", Quick);
        Drafting At(int? tempo) => Draft(sheet, new DraftWish(tempo is { } slow ? new Tempo(Beats.OfQuarters(1), slow) : null) { Wishes = Wished.Of(wishes) });
        var unmet = Assert.IsType<Drafting.Unmet>(At(null));
        var named = TempoNamed().Match(Assert.Single(unmet.Problems).Expected);

        Assert.True(named.Success, unmet.Problems[0].ToString());
        var tempo = int.Parse(named.Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.IsType<Drafting.Made>(At(tempo));
        Assert.IsType<Drafting.Unmet>(At(tempo + 1));
    }

    private static HashSet<WrittenNote> Bells(Choice choice) => [.. choice.Strokes.Where(s => !s.IsTune).Select(s => s.Note)];

    private static Arrangement Made(Drafting drafting) => Assert.IsType<Drafting.Made>(drafting).Arrangement;

    private static Drafting Draft(LeadSheet sheet, DraftWish wish) =>
        Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, wish, null, TestContext.Current.CancellationToken);

    private static LeadSheet Sheet(string file) => RevoicingTests.Read(file, File.ReadAllText(Demo(file)));

    private static string Demo(string file) => RepositoryFiles.All("leadsheets-demo", file).Single();

    [GeneratedRegex("--tempo ([0-9]+)$")]
    private static partial Regex TempoNamed();
}
