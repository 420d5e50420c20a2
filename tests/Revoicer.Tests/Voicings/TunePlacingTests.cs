using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Voicings;

public class TunePlacingTests
{
    [Fact]
    public void A_tune_is_placed_in_every_octave_that_has_its_bells_as_written_first()
    {
        var placing = Placing("\"C\"C2 E2 G2 c2|", ShippedTowers.Default);
        Assert.Equal([0, 1, -1, 2], placing.All().Select(t => t.Octaves));
    }

    [Fact]
    public void A_missing_bell_rules_an_octave_out()
    {
        // C sharp 3 is missing on the tower of 47 bells, two octaves below the written note.
        var placing = Placing("\"A\"^c2 E2 A2 e2|", ShippedTowers.Default);
        Assert.DoesNotContain(-2, placing.All().Select(t => t.Octaves));
        Assert.Contains(-1, placing.All().Select(t => t.Octaves));
    }

    [Fact]
    public void A_tune_that_fits_nowhere_is_told_the_keys_that_would_do()
    {
        // Four octaves on a tower of two.
        var wide = Placing("\"C\"C,2 E2 G2 c'''2|", ShippedTowers.Named("chapel-23"));
        Assert.Empty(wide.All());
        Assert.Contains("nor in any other key", wide.WhereItFits(), StringComparison.Ordinal);

        // Two octaves from C sharp: the small tower has its two octaves from C.
        var near = Placing("\"A\"^C2 F2 A2 ^c'2|", ShippedTowers.Named("chapel-23"));
        Assert.Empty(near.All());
        Assert.Contains("--key -1", near.WhereItFits(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_repeated_too_soon_is_told_with_the_tempo_that_would_do()
    {
        // G4 on the 47 bells needs 0.35 s (playing-limits.tsv, recovery_60_71_s); at 120 an eighth has 0.25 s.
        var told = Assert.Single(Placing("\"C\"G G c2 e4|", ShippedTowers.Default).All().First().Told);
        Assert.Equal(
            "bar 1 beat 1.5: G4 is struck again after 0.25 s and needs 0.35 s to recover; --ease-tune leaves it out, or play it at 85 quarter notes a minute",
            told);
    }

    [Fact]
    public void The_tempo_that_would_do_is_that_of_the_passage()
    {
        // At 60 a sixteenth has 0.25 s and needs 0.35: 42 there, whatever the tempo before.
        var told = Assert.Single(Placing("\"C\"c4 e4|[Q:1/4=60]G/G/ c3 e4|", ShippedTowers.Default).All().First().Told);
        Assert.EndsWith("or play it at 42 quarter notes a minute", told, StringComparison.Ordinal);
    }

    [Fact]
    public void The_tempo_that_a_hand_needs_is_that_of_the_passage()
    {
        // The same leaps at half the speed need half the tempo.
        const string Leaps = "C/4c'/4C/4c'/4C/4c'/4C/4c'/4";
        var quick = Placing($"\"C\"c4 e4|[Q:1/4=200]{Leaps} c2 e4|", ShippedTowers.Default).All().First().Told;
        var alone = Placing($"[Q:1/4=200]\"C\"{Leaps} c2 e4|", ShippedTowers.Default).All().First().Told;
        Assert.Contains(quick, t => t.Contains("no hand gets to", StringComparison.Ordinal));
        Assert.Equal(Tempi(alone), Tempi(quick));

        static IEnumerable<string> Tempi(IEnumerable<string> told) => told.Select(t => t.Split(" at ")[^1]);
    }

    [Fact]
    public void Ease_leaves_the_repeated_note_out_and_says_so()
    {
        var eased = Placing("\"C\"G G c2 e4|", ShippedTowers.Default, ease: true).All().First();
        Assert.Equal([67, 72, 76], eased.Strokes.Select(s => s.Note.Midi));
        Assert.Contains("it is left out", Assert.Single(eased.Told), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tune_too_quick_for_its_bells_is_still_drafted_as_given()
    {
        var sheet = Sheet("\"C\"G G c2 e4|\"G7\"d2 d2 \"C\"c4|]");
        var made = Assert.IsType<Drafting.Made>(
            Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, null, CancellationToken.None)).Arrangement;
        Assert.Equal(HeardTune.Of(sheet).Count, made.Strokes.Count(s => s.IsTune));
        Assert.All(new Checker(ShippedTowers.Default).Check(made.Strokes), b => Assert.True(b.InTune));
    }

    [Fact]
    public void Of_notes_written_together_the_highest_is_the_tune()
    {
        var placed = Placing("\"C\"[CEG]2 c2 e4|", ShippedTowers.Default).All().First();
        Assert.Equal([67, 72, 76], placed.Strokes.Select(s => s.Note.Midi));
        Assert.Contains("2 lower ones are left out", Assert.Single(placed.Told), StringComparison.Ordinal);
        var one = Placing("\"C\"[EG]2 c2 e4|", ShippedTowers.Default).All().First();
        Assert.Contains("one lower one is left out", Assert.Single(one.Told), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tune_without_chord_symbols_is_refused_with_a_reason()
    {
        var drafting = Revoicing.Draft(Sheet("G2 A2 B2 c2|"), ShippedTowers.Default, ShippedSounds.Default, DraftWish.None, null, CancellationToken.None);
        Assert.Contains("has a tune but no chord symbols", Assert.IsType<Drafting.NoChords>(drafting).Reason, StringComparison.Ordinal);
    }

    private static TunePlacing Placing(string music, Tower tower, bool ease = false)
    {
        var sheet = Sheet(music);
        return new TunePlacing(
            sheet, tower, new Reach(PlayingLimits.For(tower), tower.Transposition), SheetTempi.Of(sheet, sheet.Tempo!.Value), ease);
    }

    private static LeadSheet Sheet(string music) => Assert.IsType<Reading<LeadSheet>.Accepted>(
        AbcReader.Read("buoy.abc", $"X:1\nT:Buoy\nM:4/4\nL:1/8\nQ:1/4=120\nK:C\n{music}\n", SheetChoice.First)).Value;
}
