using System.Globalization;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes the bars of a score one after the other.</summary>
/// <param name="xml">The document.</param>
/// <param name="spelling">How bells are spelled.</param>
/// <param name="transpose">Writes the element that says how far from the written note the bells are heard.</param>
internal sealed class MeasureWriter(XmlText xml, PaperSpelling spelling, Action transpose)
{
    private static readonly ScoreVoice[] UpperStaff = [ScoreVoice.RightHand, ScoreVoice.LeftHand];

    private readonly NoteWriter _notes = new(xml, spelling);
    private readonly HarmonyWriter _harmony = new(xml);
    private ScoreMeasure? _before;

    /// <summary>One bar.</summary>
    /// <param name="measure">The bar.</param>
    /// <param name="isLast">Whether it is the last of the score.</param>
    public void Write(ScoreMeasure measure, bool isLast)
    {
        var number = measure.Bar.Number.ToString(CultureInfo.InvariantCulture);
        ReadOnlySpan<string> attributes = IsCounted(measure) ? ["number", number] : ["number", number, "implicit", "yes"];
        xml.Element("measure", () => Inside(measure, isLast), attributes);
        _before = measure;
    }

    // A pickup is no bar of its own, nor is the second half of a bar that a repeat sign parts.
    private bool IsCounted(ScoreMeasure measure) =>
        measure.Bar.Number != 0
        && !(measure.Bar.Offset > Beats.Zero && _before?.Bar.Number == measure.Bar.Number && _before.Bar.Written != measure.Bar.Written);

    private void Inside(ScoreMeasure measure, bool isLast)
    {
        Barlines.Left(xml, measure.Paper);
        Attributes(measure);
        var upper = new Accidentals([measure.Voices[0], measure.Voices[1]], measure.Key, s => spelling.NameOf(s, measure.Key));
        var lower = new Accidentals([measure.Voices[2]], measure.Key, s => spelling.NameOf(s, measure.Key));
        foreach (var voice in UpperStaff)
        {
            Voice(measure, voice, upper);
            xml.Element("backup", () => xml.Length("duration", measure.Bar.Length));
        }

        Voice(measure, ScoreVoice.Feet, lower);
        Barlines.Right(xml, measure.Paper, isLast);
    }

    private void Attributes(ScoreMeasure measure)
    {
        var isFirst = _before is null;
        var key = isFirst || measure.Key != _before!.Key ? measure.Key : null;
        var hasTime = isFirst || measure.Bar.Meter != _before!.Bar.Meter;
        if (!isFirst && key is null && !hasTime)
        {
            return;
        }

        xml.Element("attributes", () =>
        {
            TextIf(isFirst, "divisions", xml.Divisions);
            Key(key);
            Time(hasTime ? measure.Bar.Meter : null);
            if (isFirst)
            {
                xml.Text("staves", "2");
                Clef("1", "G", 2);
                Clef("2", "F", 4);
                transpose();
            }
        });
    }

    private void Key(KeySignature? key)
    {
        if (key is { } found)
        {
            xml.Element("key", () =>
            {
                xml.Number("fifths", found.Fifths);
                xml.Text("mode", found.Mode.ToString().ToLowerInvariant());
            });
        }
    }

    private void Time(Meter? meter)
    {
        if (meter is { } found)
        {
            xml.Element("time", () =>
            {
                xml.Number("beats", found.Upper);
                xml.Number("beat-type", found.Lower);
            });
        }
    }

    private void Clef(string staff, string sign, int line) => xml.Element(
        "clef",
        () =>
        {
            xml.Text("sign", sign);
            xml.Number("line", line);
        },
        "number",
        staff);

    private void TextIf(bool isThere, string name, string text)
    {
        if (isThere)
        {
            xml.Text(name, text);
        }
    }

    // What is said of a place stands before the sign that covers it.
    private void Voice(ScoreMeasure measure, ScoreVoice voice, Accidentals accidentals)
    {
        foreach (var piece in measure.Voices[(int)voice])
        {
            if (voice == ScoreVoice.RightHand)
            {
                Above(measure, piece);
                Rolls(measure, piece);
            }
            else if (voice == ScoreVoice.Feet)
            {
                Basses(measure, piece);
            }

            _notes.Write(piece, voice, measure, accidentals, IsHidden(measure, voice) || IsPassedOver(piece, voice, measure));
        }
    }

    // Where the tune goes to and fro between the hands, the short rests of the one that waits would bury it.
    // Those of a tuplet stay, since they hold its bracket.
    private static bool IsPassedOver(ScorePiece piece, ScoreVoice voice, ScoreMeasure measure)
    {
        var other = voice == ScoreVoice.RightHand ? ScoreVoice.LeftHand : ScoreVoice.RightHand;
        return voice != ScoreVoice.Feet
            && piece is { Note: null, Tuplet: null }
            && piece.End - piece.Start < measure.Bar.Meter.Beat
            && measure.Voices[(int)other].Any(p => p.Start <= piece.Start && p.End > piece.Start && p.Note is { } note && note.Strokes.Any(s => s.IsTune));
    }

    // A hand that rests the whole bar has an unseen rest where the other plays.
    private static bool IsHidden(ScoreMeasure measure, ScoreVoice voice) => voice switch
    {
        ScoreVoice.RightHand => IsSilent(measure, voice) && !IsSilent(measure, ScoreVoice.LeftHand),
        ScoreVoice.LeftHand => IsSilent(measure, voice),
        _ => false,
    };

    private static bool IsSilent(ScoreMeasure measure, ScoreVoice voice) => measure.Voices[(int)voice] is [{ Note: null }];

    private void Above(ScoreMeasure measure, ScorePiece piece)
    {
        var start = measure.Bar.Start + piece.Start;
        var end = measure.Bar.Start + piece.End;
        foreach (var change in measure.Tempi.Where(t => t.From >= start && t.From < end))
        {
            Tempo(change.Tempo, change.From - start);
        }

        foreach (var mark in measure.Marks.Where(m => m.At >= start && m.At < end))
        {
            _harmony.Write(mark, mark.At - start);
        }
    }

    private void Basses(ScoreMeasure measure, ScorePiece piece)
    {
        var start = measure.Bar.Start + piece.Start;
        foreach (var mark in measure.Basses.Where(m => m.At >= start && m.At < measure.Bar.Start + piece.End))
        {
            Words($"bass {mark.SoundingBass}", mark.At - start, "2");
        }
    }

    // A wavy line at a note that a limb strikes alone is easily overlooked, so a roll is named as well.
    private void Rolls(ScoreMeasure measure, ScorePiece piece)
    {
        foreach (var place in measure.Rolls.Where(at => at >= piece.Start && at < piece.End))
        {
            Words("roll", place - piece.Start, "1");
        }
    }

    private void Words(string words, Beats offset, string staff) => xml.Element(
        "direction",
        () =>
        {
            xml.Element("direction-type", () => xml.Text("words", words, "font-style", "italic"));
            Offset(offset);
            xml.Text("staff", staff);
        },
        "placement",
        "below");

    // A unit that no note value expresses is counted in quarters.
    private void Tempo(Tempo tempo, Beats offset)
    {
        var shown = NoteValue.Of(tempo.Unit) is null ? new Tempo(Beats.OfQuarters(1), tempo.QuartersPerMinute) : tempo;
        var value = NoteValue.Of(shown.Unit)!.Value;
        xml.Element(
            "direction",
            () =>
            {
                xml.Element("direction-type", () => xml.Element("metronome", () =>
                {
                    xml.Text("beat-unit", value.Type);
                    for (var dot = 0; dot < value.Dots; dot++)
                    {
                        xml.Empty("beat-unit-dot");
                    }

                    xml.Text("per-minute", shown.PerMinute.ToString("0.##", CultureInfo.InvariantCulture));
                }));
                Offset(offset);
                xml.Text("staff", "1");
                xml.Empty("sound", "tempo", ((decimal)tempo.QuartersPerMinute).ToString(CultureInfo.InvariantCulture));
            },
            "placement",
            "above");
    }

    private void Offset(Beats offset)
    {
        if (offset > Beats.Zero)
        {
            xml.Length("offset", offset);
        }
    }
}
