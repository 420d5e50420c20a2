using System.Globalization;
using Revoicer.Music;
using Revoicer.Playing;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes notes and rests.</summary>
/// <param name="xml">The document.</param>
/// <param name="spelling">How bells are spelled.</param>
internal sealed class NoteWriter(XmlText xml, PaperSpelling spelling)
{
    // The compass of a tower of 47 bells: C to c4 without the lowest C sharp and D sharp (common practice).
    private const int LowestUsual = 48;
    private const int HighestUsual = 96;
    private static readonly int[] UsuallyMissing = [49, 51];

    /// <summary>One sign: a rest, or all notes of a chord.</summary>
    /// <param name="piece">The sign.</param>
    /// <param name="voice">Its voice.</param>
    /// <param name="measure">Its bar.</param>
    /// <param name="accidentals">The accidentals of its staff.</param>
    /// <param name="isHidden">Whether a rest is only there to fill the voice.</param>
    public void Write(ScorePiece piece, ScoreVoice voice, ScoreMeasure measure, Accidentals accidentals, bool isHidden)
    {
        if (piece.Note is not { } note)
        {
            Rest(piece, voice, isHidden);
            return;
        }

        for (var i = 0; i < note.Strokes.Count; i++)
        {
            var stroke = note.Strokes[i];
            var name = spelling.NameOf(stroke, measure.Key);
            var isFirst = i == 0;
            var hasFermata = isFirst && HasFermata(piece, voice, measure);
            xml.Element("note", () =>
            {
                if (!isFirst)
                {
                    xml.Empty("chord");
                }

                Pitch(stroke, name);
                Length(piece, voice, accidentals.Of(piece, stroke, name));
                xml.Text("stem", IsUp(note, voice) ? "up" : "down");
                if (!IsUsual(stroke.Note.Midi))
                {
                    xml.Text("notehead", "normal", "parentheses", "yes");
                }

                xml.Text("staff", StaffOf(voice));
                Beams(piece, isFirst);
                Notations(piece, isFirst, hasFermata);
            });
        }
    }

    /// <summary>The number of a voice's staff.</summary>
    public static string StaffOf(ScoreVoice voice) => voice == ScoreVoice.Feet ? "2" : "1";

    // One sign on each staff.
    private static bool HasFermata(ScorePiece piece, ScoreVoice voice, ScoreMeasure measure) =>
        !piece.IsTiedBack
        && measure.Bar.Fermatas.Contains(piece.Start)
        && (voice != ScoreVoice.LeftHand || !measure.Voices[(int)ScoreVoice.RightHand].Any(p => p is { Note: not null, IsTiedBack: false } && p.Start == piece.Start));

    private void Rest(ScorePiece piece, ScoreVoice voice, bool isHidden)
    {
        xml.Element(
            "note",
            () =>
            {
                xml.Empty("rest", piece.IsBarRest ? ["measure", "yes"] : []);
                Length(piece, voice, null);
                xml.Text("staff", StaffOf(voice));
                Notations(piece, isFirst: true, hasFermata: false);
            },
            isHidden ? ["print-object", "no"] : []);
    }

    private void Pitch(Stroke stroke, NoteName name) => xml.Element("pitch", () =>
    {
        xml.Text("step", name.Letter.ToString());
        if (name.Alteration != 0)
        {
            xml.Number("alter", name.Alteration);
        }

        xml.Number("octave", PaperSpelling.OctaveOf(stroke.Note, name));
    });

    private void Length(ScorePiece piece, ScoreVoice voice, string? accidental)
    {
        xml.Length("duration", piece.End - piece.Start);
        if (piece.IsTiedBack)
        {
            xml.Empty("tie", "type", "stop");
        }

        if (piece.IsTiedOn)
        {
            xml.Empty("tie", "type", "start");
        }

        xml.Number("voice", (int)voice + 1);
        if (piece.Value is { } value)
        {
            xml.Text("type", value.Type);
            for (var dot = 0; dot < value.Dots; dot++)
            {
                xml.Empty("dot");
            }
        }

        if (accidental is not null)
        {
            xml.Text("accidental", accidental);
        }

        TimeModification(piece.Tuplet);
    }

    private void TimeModification(Tuplet? tuplet)
    {
        if (tuplet is not null)
        {
            xml.Element("time-modification", () =>
            {
                xml.Number("actual-notes", tuplet.Actual);
                xml.Number("normal-notes", tuplet.Normal);
                xml.Text("normal-type", tuplet.Type);
            });
        }
    }

    private void Beams(ScorePiece piece, bool isFirst)
    {
        for (var level = 0; isFirst && level < Math.Min(8, piece.Beams.Count); level++)
        {
            xml.Text("beam", piece.Beams[level], "number", (level + 1).ToString(CultureInfo.InvariantCulture));
        }
    }

    private void Notations(ScorePiece piece, bool isFirst, bool hasFermata)
    {
        var isRolled = piece.Note is { IsRolled: true } && !piece.IsTiedBack;
        var hasBracket = isFirst && (piece.BeginsTuplet || piece.EndsTuplet);
        if (!piece.IsTiedBack && !piece.IsTiedOn && !isRolled && !hasBracket && !hasFermata)
        {
            return;
        }

        xml.Element("notations", () =>
        {
            EmptyIf(piece.IsTiedBack, "tied", "type", "stop");
            EmptyIf(piece.IsTiedOn, "tied", "type", "start");
            EmptyIf(isFirst && piece.BeginsTuplet, "tuplet", "type", "start", "bracket", "yes");
            EmptyIf(isFirst && piece.EndsTuplet, "tuplet", "type", "stop");
            EmptyIf(hasFermata, "fermata");
            EmptyIf(isRolled, "arpeggiate", "number", "1");
        });
    }

    private void EmptyIf(bool isThere, string name, params ReadOnlySpan<string> attributes)
    {
        if (isThere)
        {
            xml.Empty(name, attributes);
        }
    }

    // In the one voice of the feet the stem tells the foot; of two pedals at once the lower is the left one's.
    private static bool IsUp(VoiceNote note, ScoreVoice voice) =>
        voice == ScoreVoice.RightHand || (voice == ScoreVoice.Feet && note.Strokes.All(s => s.Limb == Limb.RightFoot));

    private static bool IsUsual(int midi) => midi is >= LowestUsual and <= HighestUsual && !UsuallyMissing.Contains(midi);
}
