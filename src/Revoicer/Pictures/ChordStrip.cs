using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Writing.Text;

namespace Revoicer.Pictures;

/// <summary>A chord over the keyboard: a row for each bell that is struck or that quarrels, with its partials, and the quarrels between them.</summary>
/// <param name="Title">The setting, how the chord is struck and what it clashes.</param>
/// <param name="Keyboard">The keys of the tower, lowest first.</param>
/// <param name="Bells">The bells, lowest first.</param>
/// <param name="Links">What quarrels most, worst first.</param>
/// <param name="Frequencies">Round frequencies and where they lie.</param>
public sealed record ChordStrip(string Title, Items<StripKey> Keyboard, Items<StripBell> Bells, Items<StripLink> Links, Items<StripFrequency> Frequencies)
{
    // The middles of octave bands (ISO 266), named as there.
    private static readonly Items<Hertz> Octaves =
        Items.Of([new Hertz(31.5), new Hertz(63), new Hertz(125), new Hertz(250), new Hertz(500), new Hertz(1000), new Hertz(2000), new Hertz(4000), new Hertz(8000)]);

    /// <summary>The strip of a chord.</summary>
    /// <param name="name">The setting's name.</param>
    /// <param name="draft">The arrangement.</param>
    /// <param name="choice">Its chord.</param>
    /// <param name="tower">The tower it was made for.</param>
    internal static ChordStrip Of(string name, Arrangement draft, Choice choice, Tower tower)
    {
        var notes = new KeySpelling(draft.WrittenKey);
        var struck = choice.Strokes.ToLookup(s => s.Note);
        var bells = choice.Strokes.Select(s => s.Note).Concat(choice.Quarrels.SelectMany(In)).Distinct().Order()
            .Select(n => Row(tower, n, $"{notes.Of(n, choice.ToneNames)} {How(draft, choice, struck[n], n)}", struck.Contains(n)))
            .ToItems();
        var words = new QuarrelWords(draft, choice.ToneNames);
        return new ChordStrip(
            $"{name}: {choice.Figure}, clash {ClashWords.Of(choice.Clash)}",
            Enumerable.Range(tower.Bells[0].Note.Midi, tower.Bells[^1].Note.Midi - tower.Bells[0].Note.Midi + 1)
                .Select(WrittenNote.AtMidi)
                .Select(n => new StripKey(n, tower.At(n) is not null, struck.Contains(n)))
                .ToItems(),
            bells,
            choice.Quarrels.Select(q => LinkOf(tower, q, words)).ToItems(),
            Octaves.Select(f => new StripFrequency(f, PlaceOf(tower, f))).ToItems());
    }

    private static IEnumerable<WrittenNote> In(Quarrel quarrel) => quarrel switch
    {
        PairQuarrel pair => [pair.Lower, pair.Upper],
        ChordQuarrel one => [one.Bell],
        _ => throw new ArgumentOutOfRangeException(nameof(quarrel), quarrel, "no such quarrel"),
    };

    // By which limb; where it was not struck with the chord, by the tune, or before.
    private static string How(Arrangement draft, Choice choice, IEnumerable<Stroke> strokes, WrittenNote note) =>
        strokes.Select(s => LimbNames.Of(s.Limb)).FirstOrDefault()
            ?? (draft.Strokes.Any(s => s.IsTune && s.Note == note && s.Beat >= choice.Start && s.Beat < choice.Start + choice.Length) ? "tune" : "rings on");

    private static StripBell Row(Tower tower, WrittenNote note, string name, bool isStruck)
    {
        var bell = tower.At(note)!;
        return new StripBell(note, name, isStruck, bell.Partials.Select(p => PlaceOf(tower, p.Frequency)).Order().ToItems());
    }

    private static StripLink LinkOf(Tower tower, Quarrel quarrel, QuarrelWords words) => quarrel switch
    {
        PairQuarrel pair => new StripLink(
            words.InShort(quarrel), quarrel.Share, new StripEnd(pair.Lower, PlaceOf(tower, pair.LowerFrequency)), new StripEnd(pair.Upper, PlaceOf(tower, pair.UpperFrequency))),
        ChordQuarrel one => new StripLink(words.InShort(quarrel), quarrel.Share, new StripEnd(one.Bell, PlaceOf(tower, one.Frequency)), null),
        _ => throw new ArgumentOutOfRangeException(nameof(quarrel), quarrel, "no such quarrel"),
    };

    // Where on the keyboard lies the key whose strike note has that frequency, in semitones as MIDI numbers them; the tower's
    // pitch is the mean of its bells.
    private static double PlaceOf(Tower tower, Hertz frequency) =>
        (12 * Math.Log2(frequency.Value)) + tower.Bells.Average(b => b.Note.Midi - (12 * Math.Log2(b.Strike.Value)));
}
