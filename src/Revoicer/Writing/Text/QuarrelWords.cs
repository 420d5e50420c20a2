using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>Tells which partials beat against each other in a chord, bells named as the chord has them.</summary>
internal sealed class QuarrelWords
{
    private readonly Transposition _transposition;
    private readonly KeySpelling _written;
    private readonly KeySpelling _sounding;
    private readonly Items<NoteName> _chord;
    private readonly Items<NoteName> _chordHeard;

    public QuarrelWords(Arrangement arrangement, Choice choice)
    {
        _transposition = arrangement.Tower.Transposition;
        _written = new KeySpelling(arrangement.WrittenKey);
        _sounding = new KeySpelling(arrangement.SoundingKey);
        _chord = choice.ToneNames;
        _chordHeard = choice.ToneNames.Select(n => n.Moved(FifthsHigher(arrangement))).ToItems();
    }

    /// <summary>"the tierce of C3 against the prime of E4".</summary>
    public string InShort(Quarrel quarrel) =>
        $"the {quarrel.LowerPartial} of {_written.Of(quarrel.Lower, _chord)} against the {quarrel.UpperPartial} of {_written.Of(quarrel.Upper, _chord)}";

    /// <summary>
    /// "the tierce of C3 (strikes C4), 313 Hz, against the prime of E3 (strikes E4), 330 Hz, for 1.4 s: 41 % of the
    /// roughness".
    /// </summary>
    public string InFull(Quarrel quarrel) => string.Create(
        CultureInfo.InvariantCulture,
        $"the {quarrel.LowerPartial} of {Bell(quarrel.Lower)}, {quarrel.LowerFrequency}, against the {quarrel.UpperPartial} of {Bell(quarrel.Upper)}, {quarrel.UpperFrequency}, {Time(quarrel)}: {100 * quarrel.Share:0} % of the roughness");

    // As far as the keys lie apart on the line of fifths; without keys, as far as C major would move.
    private static int FifthsHigher(Arrangement arrangement)
    {
        var from = arrangement.WrittenKey ?? new KeySignature(new NoteName(Letter.C), Mode.Major);
        var to = arrangement.SoundingKey ?? from.Moved(arrangement.Tower.Transposition.Semitones);
        return to.Fifths - from.Fifths;
    }

    // One of them is faint from its stroke on, or both rang on into the chord and one has fallen below what counts as heard.
    private static string Time(Quarrel quarrel) => quarrel.Lasts.Value < 0.05
        ? "fading"
        : string.Create(CultureInfo.InvariantCulture, $"for {quarrel.Lasts.Value:0.0} s");

    private string Bell(WrittenNote note) =>
        $"{_written.Of(note, _chord)} (strikes {_sounding.Of(note + _transposition, _chordHeard)})";
}
