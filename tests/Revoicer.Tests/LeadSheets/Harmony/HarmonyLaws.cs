using FsCheck;
using FsCheck.Fluent;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Harmony;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Harmony;

/// <summary>Generators for passages.</summary>
public static class PassageGens
{
    // Twice in four a chord's tone, else any.
    private static readonly int[] Pitches = [48, 52, 55, 60, 64, 67, 53, 57, 65, 69, 50, 59, 62, 71, 51, 54, 56, 58, 61, 63];

    /// <summary>One to four voices in one to four bars of 3/4 or 4/4.</summary>
    public static Arbitrary<Passage> Passages() =>
        (from upper in Gen.Elements(3, 4)
         from voices in Gen.Choose(1, 4)
         from bars in Gen.Choose(1, 4)
         from notes in Bar(upper).ArrayOf(voices * bars)
         select Of(upper, [.. Enumerable.Range(0, voices).Select(v => notes[(v * bars)..((v + 1) * bars)].Select(n => n.ToItems()).ToItems())])).ToArbitrary();

    private static Passage Of(int upper, Items<Items<TuneNote>>[] voices)
    {
        var meter = new Meter(upper, 4);
        var (at, where) = (Beats.Zero, Place.WholeFile("quay.abc"));
        var bars = voices[0].Select((_, i) => new WrittenBar(i + 1, meter, meter.Bar, [new ChordSpan(at, meter.Bar, null, where)], false)).ToItems();
        return new Passage(
            new LeadSheet("Kelp", new KeySignature(new NoteName(Letter.C), Mode.Major), null, bars, bars.Select((_, i) => new PlayedBar(i, 1, meter.Bar * i)).ToItems()),
            voices.Select((v, i) => new PassageVoice($"{i + 1}", v)).ToItems());
    }

    private static Gen<TuneNote[]> Bar(int upper) =>
        from cuts in Gen.Choose(0, 4 * upper).ArrayOf(4)
        from pitches in Gen.OneOf(Gen.Elements(Pitches), Gen.Constant(-1)).ArrayOf(6)
        let places = cuts.Append(0).Append(4 * upper).Distinct().Order().ToArray()
        select Notes(places, pitches);

    private static TuneNote[] Notes(int[] places, int[] pitches) =>
    [
        .. places.Zip(places.Skip(1), pitches)
            .Where(n => n.Third >= 0)
            .Select(n => new TuneNote(Beats.OfQuarters(n.First, 4), Beats.OfQuarters(n.Second - n.First, 4), new NoteName(Letter.C), WrittenNote.AtMidi(n.Third), false)),
    ];
}

public sealed class HarmonyLaws
{
    [Law(Arbitrary = [typeof(PassageGens)], MaxTest = 200)]
    public void A_passage_moved_has_its_chords_moved(Passage passage, int by)
    {
        by %= 24;
        var key = passage.Sheet.Key!.Value.Moved(by);
        var moved = passage with
        {
            Sheet = passage.Sheet with { Key = key },
            Voices = passage.Voices.Select(v => v with { Bars = v.Bars.Select(b => b.Select(n => n with { Note = WrittenNote.AtMidi(n.Note.Midi + by) }).ToItems()).ToItems() }).ToItems(),
        };
        Assert.Equal(Chords(passage, by, 1), Chords(moved, 0, 1));
    }

    [Law(Arbitrary = [typeof(PassageGens)], MaxTest = 200)]
    public void Longer_or_shorter_note_values_keep_the_chords(Passage passage, bool isLonger)
    {
        var scaled = passage with
        {
            Sheet = passage.Sheet with
            {
                Bars = passage.Sheet.Bars.Select(b => new WrittenBar(
                    b.Number,
                    new Meter(b.Meter.Upper, isLonger ? 2 : 8),
                    Scaled(b.Length),
                    b.Chords.Select(c => c with { Length = Scaled(c.Length) }).ToItems(),
                    b.EndsSection)).ToItems(),
            },
            Voices = passage.Voices.Select(v => v with { Bars = v.Bars.Select(b => b.Select(n => n with { Start = Scaled(n.Start), Length = Scaled(n.Length) }).ToItems()).ToItems() }).ToItems(),
        };
        Assert.Equal(Chords(passage, 0, isLonger ? 4 : 1), Chords(scaled, 0, 2));

        Beats Scaled(Beats length) => isLonger ? length * 2 : length / 2;
    }

    [Law(Arbitrary = [typeof(PassageGens)], MaxTest = 200)]
    public void The_order_of_voices_does_not_matter(Passage passage) => Assert.Equal(
        Chorded.Of(passage),
        Chorded.Of(passage with { Voices = passage.Voices.Reverse().ToItems() }));

    [Law(Arbitrary = [typeof(PassageGens)], MaxTest = 200)]
    public void Every_stretch_with_notes_has_a_chord_or_is_told_as_unclear(Passage passage)
    {
        var found = HarmonyFinding.Of(passage, cancel: TestContext.Current.CancellationToken);
        foreach (var (i, bar) in found.Sheet.Bars.Index())
        {
            foreach (var span in bar.Chords.Where(c => c.Symbol is null))
            {
                var sounds = passage.Voices.Any(v => v.Bars[i].Any(n => n.Start < span.Start + span.Length && n.Start + n.Length > span.Start));
                Assert.Equal(sounds, found.Unclear.Contains(new UnclearStretch(i, bar.Number, span.Start, span.Length)));
            }
        }

        Assert.Equal(found.Found, found.Sheet.Bars.Sum(b => b.Chords.Count(c => c.Symbol is not null)));
    }

    // Stretches in parts of a quarter that the scale makes comparable, roots and basses as they sound.
    private static List<(int Bar, Beats Start, string? Suffix, int Root, int Bass)> Chords(Passage passage, int moved, int scale) =>
    [
        .. HarmonyFinding.Of(passage, cancel: TestContext.Current.CancellationToken).Sheet.Bars.SelectMany((bar, i) => bar.Chords, (bar, c) => (bar, c)).Select(p => (
            p.bar.Number,
            p.c.Start * scale / 2,
            p.c.Symbol?.Suffix,
            p.c.Symbol is { } symbol ? (symbol.Root.PitchClass + moved).Value : -1,
            p.c.Symbol is { } over ? (over.Lowest.PitchClass + moved).Value : -1)),
    ];
}
