using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Voicings;
using Revoicer.Tests.Writing.Midi;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Midi;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests;

/// <summary>The tune under the chords, and the choice between the two layouts.</summary>
public class RevoicingLayoutTests
{
    private const string Ebb = "\"C\"C E G2|\"F\"A2 F2|\"G7\"G F D2|\"C\"C4|]";

    // Basses, carry and the rest are dear beside the clash, so that a tune that is the bass itself is cheaper.
    private static readonly Sound BassesAreDear = ShippedSounds.Default with { Clash = 0.02, BassHeight = 20 };

    public static TheoryData<string> TuneDemos => RevoicingTests.TuneDemos;

    [Theory]
    [MemberData(nameof(TuneDemos))]
    public void A_tune_below_is_whole_lowest_and_stronger_and_the_hands_have_the_chords(string file)
    {
        var sheet = RevoicingTests.Read(file, File.ReadAllText(file));
        var sound = ShippedSounds.Named("bright");
        var made = Made(sheet, LayoutWish.Below, sound);
        var heard = HeardTune.Of(sheet);
        var tune = made.Strokes.Where(s => s.IsTune).ToArray();
        Assert.Equal(heard.Select(n => (n.Start, n.Note.Midi + (12 * made.TuneOctaves!.Value))), tune.Select(s => (s.Beat, s.Note.Midi)));
        Assert.All(tune, s => Assert.Contains(s.Limb, new[] { Limb.LeftFoot, Limb.RightFoot, Limb.LeftHand }));
        Assert.DoesNotContain(made.Strokes, s => !s.IsTune && s.IsPedal);

        // The heavy bells of bright are struck 3 dB softer; a tune on them is not.
        Assert.Contains(tune, s => s.Note.Midi < 60);
        Assert.All(tune, s => Assert.Equal(sound.TuneTouch, s.Level));

        // At least a minor third above the tune that sounds with it (common practice).
        foreach (var stroke in made.Strokes.Where(s => !s.IsTune))
        {
            var at = stroke.At - made.Shift;
            var under = heard.Where(n => made.Tempi.At(n.Start).Value <= at.Value + 1e-6 && made.Tempi.At(n.End).Value > at.Value + 1e-6);
            Assert.All(under, n => Assert.True(stroke.Note.Midi >= n.Note.Midi + (12 * made.TuneOctaves!.Value) + 3));
        }

        Assert.All(new Checker(ShippedTowers.Default).Check(made.Strokes), b => Assert.True(b.InTune));
    }

    [Fact]
    public void Nothing_is_asked_of_a_bass_where_the_tune_is_it()
    {
        var made = Made(TuneSlots.Sheet(Ebb), LayoutWish.Below, ShippedSounds.Default);
        Assert.Empty(made.Totals.LeftOut);
        Assert.Equal((0, 0), (made.Totals.RootLowest, made.Totals.StrongBeats.WithBass));
        Assert.All(made.Choices, c => Assert.DoesNotContain(c.Terms, t => t.Term == TermNames.Of(Term.Bass) || t.Term == TermNames.Of(Term.BassLine)));
        Assert.All(made.Choices, c => Assert.Null(c.SoundingBass));
    }

    [Fact]
    public void Text_json_and_midi_follow_the_layout()
    {
        var made = Made(TuneSlots.Sheet(Ebb), LayoutWish.Below, ShippedSounds.Default);
        var text = RationaleText.Of(made);
        Assert.Contains("Layout       the tune in the pedals and the low manual, under the chords", text, StringComparison.Ordinal);
        Assert.Contains("Bass         the tune; the chords have none of their own\n", text, StringComparison.Ordinal);
        Assert.Contains("The tune under it: C4 (right foot), E4 (right foot), G4 (right foot).", text, StringComparison.Ordinal);
        Assert.DoesNotContain("a plain hand", text, StringComparison.Ordinal);
        Assert.DoesNotContain("have a bass bell", text, StringComparison.Ordinal);
        Assert.Equal(made, Assert.IsType<Reading<Arrangement>.Accepted>(ArrangementJson.Read("ebb.json", ArrangementJson.Write(made))).Value);

        // A4 lies above the pedals, so the left hand has it, in the manual's track.
        int Notes(int track) => MidiWalk.Through(MidiWriting.Bytes(made)).Tracks[track].Count(e => e.IsOn);
        Assert.Equal(made.Strokes.Count(s => s.IsTune && s.Note.Midi <= 67), Notes(2));
        Assert.Equal(made.Strokes.Count(s => !s.IsTune || s.Note.Midi > 67), Notes(1));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_best_layout_is_the_cheaper_and_tells_of_the_other(bool basesAreDear)
    {
        var sheet = TuneSlots.Sheet(Ebb);
        var sound = basesAreDear ? BassesAreDear : ShippedSounds.Default;
        var (above, below) = (Made(sheet, LayoutWish.Above, sound), Made(sheet, LayoutWish.Below, sound));
        var (cheaper, other) = above.Layout!.Price <= below.Layout!.Price ? (above, below) : (below, above);

        var best = Made(sheet, LayoutWish.Best, sound);

        Assert.Equal(basesAreDear ? TuneLayout.Below : TuneLayout.Above, best.Layout!.Tune);
        Assert.Equal(cheaper.Strokes, best.Strokes);
        var told = new OtherLayout(other.Layout!.Price, other.Totals.ClashDose, other.Totals.TuneDose, other.Totals.MedianClash);
        Assert.Equal(cheaper.Layout! with { Other = told }, best.Layout);
        Assert.Contains($"that is cheaper than the tune {(basesAreDear ? "above" : "below")}: price with", Flat(best), StringComparison.Ordinal);
        Assert.Equal(best, Assert.IsType<Reading<Arrangement>.Accepted>(ArrangementJson.Read("ebb.json", ArrangementJson.Write(best))).Value);
    }

    [Fact]
    public void Where_one_layout_cannot_be_played_the_best_is_the_other_and_says_why()
    {
        var best = Made(TuneSlots.Sheet("\"C\"C G c' g'|\"F\"a4|]"), LayoutWish.Best, ShippedSounds.Default);
        Assert.Equal(TuneLayout.Above, best.Layout!.Tune);
        Assert.Null(best.Layout.Other);
        Assert.Contains("with the tune below there is no draft: the tune goes from C4 to G6", Flat(best), StringComparison.Ordinal);
    }

    [Fact]
    public void Below_alone_is_unplayable_where_it_does_not_fit()
    {
        var drafting = Draft(TuneSlots.Sheet("\"C\"C G c' g'|\"F\"a4|]"), LayoutWish.Below, ShippedSounds.Default);
        Assert.Contains("--layout above", Assert.Single(Assert.IsType<Drafting.Unplayable>(drafting).Reasons), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_neither_can_be_played_each_reason_is_told_once()
    {
        var nothing = Assert.IsType<Drafting.NoChords>(Draft(TuneSlots.Sheet("C E G2|]"), LayoutWish.Best, ShippedSounds.Default));
        Assert.Contains("has a tune but no chord symbols", nothing.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_tune_the_layout_does_not_matter()
    {
        var sheet = RevoicingTests.Read("quay.chords", "title: Quay\nkey: C\ntime: 4/4\ntempo: 84\n| C | G7 | C ||\n");
        Assert.Equal(Made(sheet, LayoutWish.Above, ShippedSounds.Default), Made(sheet, LayoutWish.Best, ShippedSounds.Default));
        Assert.Null(Made(sheet, LayoutWish.Below, ShippedSounds.Default).Layout);
    }

    private static string Flat(Arrangement made) => string.Join(' ', RationaleText.Of(made).Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private static Arrangement Made(LeadSheet sheet, LayoutWish layout, Sound sound) => Assert.IsType<Drafting.Made>(Draft(sheet, layout, sound)).Arrangement;

    private static Drafting Draft(LeadSheet sheet, LayoutWish layout, Sound sound) =>
        Revoicing.Draft(sheet, ShippedTowers.Default, sound, new DraftWish { Layout = layout }, null, CancellationToken.None);
}
