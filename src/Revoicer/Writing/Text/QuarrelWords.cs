using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>Tells which partials beat against each other or against a chord, bells named as the chord has them.</summary>
internal sealed class QuarrelWords
{
    // How far up the line of fifths lies what sounds so many semitones above a note: the tierce, a minor third, three down.
    private static readonly int[] FifthsUp = [0, -5, 2, -3, 4, -1, 6, 1, -4, 3, -2, 5];

    private readonly Transposition _transposition;
    private readonly KeySpelling _written;
    private readonly KeySpelling _sounding;
    private readonly Items<NoteName> _chord;
    private readonly Items<NoteName> _chordHeard;

    /// <summary>For a chord of a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="chord">The tones of the chord as it spells them; none where no chord is named.</param>
    public QuarrelWords(IPlayedPiece piece, Items<NoteName> chord)
    {
        _transposition = piece.Tower.Transposition;
        _written = new KeySpelling(piece.WrittenKey);
        _sounding = new KeySpelling(piece.SoundingKey);
        _chord = chord;
        _chordHeard = chord.Select(n => n.Moved(FifthsHigher(piece))).ToItems();
    }

    /// <summary>"the tierce of C3 against the prime of E4", "the tierce of C3 against the chord's E".</summary>
    public string InShort(Quarrel quarrel) => quarrel switch
    {
        PairQuarrel q => $"the {q.LowerPartial} of {_written.Of(q.Lower, _chord)} against the {q.UpperPartial} of {_written.Of(q.Upper, _chord)}",
        ChordQuarrel q => $"the {q.Partial} of {_written.Of(q.Bell, _chord)} against the chord's {_written.NameOf(q.Beside, _chord)}",
        _ => throw Unknown(quarrel),
    };

    /// <summary>
    /// "the tierce of C3 (strikes C4), 313 Hz, against the prime of E3 (strikes E4), 330 Hz, for 1.4 s: 41 % of the clash";
    /// "the tierce of C3 (strikes C4), 313 Hz, an Eb against the chord's E, for 3.1 s: 12 % of the clash".
    /// </summary>
    public string InFull(Quarrel quarrel)
    {
        var who = quarrel switch
        {
            PairQuarrel q => $"the {q.LowerPartial} of {Bell(q.Lower)}, {q.LowerFrequency}, against the {q.UpperPartial} of {Bell(q.Upper)}, {q.UpperFrequency}",
            ChordQuarrel q => $"the {q.Partial} of {Bell(q.Bell)}, {q.Frequency}, {WithArticle(Contrary(q))} against the chord's {_written.NameOf(q.Beside, _chord)}",
            _ => throw Unknown(quarrel),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{who}, {Time(quarrel)}: {100 * quarrel.Share:0} % of the clash");
    }

    // Spelled from its bell, as the tierce of F is an Ab; more plainly where that takes two accidentals.
    private NoteName Contrary(ChordQuarrel quarrel)
    {
        var bell = quarrel.Bell.PitchClass;
        var name = _written.NameOf(bell, _chord).Moved(FifthsUp[quarrel.Sounds - bell]);
        return Math.Abs(name.Alteration) <= 1 ? name : _written.NameOf(quarrel.Sounds, _chord);
    }

    // "an A", "an Eb", "an F#", but "a B", "a C", "a D", "a G".
    private static string WithArticle(NoteName name) => $"{(name.Letter is Letter.A or Letter.E or Letter.F ? "an" : "a")} {name}";

    private static ArgumentOutOfRangeException Unknown(Quarrel quarrel) => new(nameof(quarrel), quarrel, "no such quarrel");

    // As far as the keys lie apart on the line of fifths; without keys, as far as C major would move.
    private static int FifthsHigher(IPlayedPiece piece)
    {
        var from = piece.WrittenKey ?? new KeySignature(new NoteName(Letter.C), Mode.Major);
        var to = piece.SoundingKey ?? from.Moved(piece.Tower.Transposition.Semitones);
        return to.Fifths - from.Fifths;
    }

    // One of them is faint from its stroke on, or both rang on into the chord and one has fallen below what counts as heard.
    private static string Time(Quarrel quarrel) => quarrel.Lasts.Value < 0.05
        ? "fading"
        : string.Create(CultureInfo.InvariantCulture, $"for {quarrel.Lasts.Value:0.0} s");

    private string Bell(WrittenNote note) =>
        $"{_written.Of(note, _chord)} (strikes {_sounding.Of(note + _transposition, _chordHeard)})";
}
