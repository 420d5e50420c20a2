using System.Numerics;
using System.Text;
using System.Xml;
using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes an arrangement as a score in MusicXML 4.0 (W3C Community Final Specification, 2021).</summary>
public static class MusicXmlWriting
{
    private const int Octave = 12;

    // Which letter a number of semitones is commonly counted as: unison, minor second, major second, ...
    private static readonly int[] Letters = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6];

    // General MIDI 1, 15th program: Tubular Bells.
    private const int TubularBells = 15;

    private static readonly XmlWriterSettings Settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
        NewLineHandling = NewLineHandling.Entitize,
    };

    /// <summary>
    /// The file's bytes: one part on two staves, the upper for the manual, the lower for the pedals, at written pitch. Each
    /// hand is a voice, so are the feet; repeats are written as repeats, a roll as a wavy line on its beat. The same
    /// arrangement gives the same bytes.
    /// </summary>
    /// <param name="arrangement">What is written; at least one bar and one tempo, its bars one after the other.</param>
    public static byte[] Bytes(Arrangement arrangement)
    {
        var measures = ScoreMeasure.All(arrangement);
        using var stream = new MemoryStream();
        using (var writer = XmlWriter.Create(stream, Settings))
        {
            var xml = new XmlText(writer, DivisionsFor(measures));
            xml.Element(
                "score-partwise",
                () =>
                {
                    new TitleBlock(xml, arrangement).Write();
                    PartList(xml);
                    var writing = new MeasureWriter(xml, new PaperSpelling(arrangement), () => Transpose(xml, arrangement));
                    xml.Element(
                        "part",
                        () =>
                        {
                            for (var i = 0; i < measures.Count; i++)
                            {
                                writing.Write(measures[i], i + 1 == measures.Count);
                            }
                        },
                        "id",
                        "P1");
                },
                "version",
                "4.0");
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    // The parts of a quarter in which every length is a whole number.
    private static BigInteger DivisionsFor(IReadOnlyList<ScoreMeasure> measures)
    {
        var divisions = BigInteger.One;
        foreach (var measure in measures)
        {
            Take(measure.Bar.Length);
            foreach (var piece in measure.Voices.SelectMany(v => v))
            {
                Take(piece.Start);
                Take(piece.End);
            }

            foreach (var place in measure.Marks.Concat(measure.Basses).Select(m => m.At).Concat(measure.Tempi.Select(t => t.From)))
            {
                Take(place - measure.Bar.Start);
            }
        }

        return divisions;

        void Take(Beats place) => divisions *= place.Denominator / BigInteger.GreatestCommonDivisor(divisions, place.Denominator);
    }

    private static void PartList(XmlText xml) => xml.Element("part-list", () => xml.Element(
        "score-part",
        () =>
        {
            xml.Text("part-name", "Carillon");
            xml.Element("score-instrument", () => xml.Text("instrument-name", "Carillon"), "id", "P1-I1");
            xml.Element(
                "midi-instrument",
                () =>
                {
                    xml.Number("midi-channel", 1);
                    xml.Number("midi-program", TubularBells);
                },
                "id",
                "P1-I1");
        },
        "id",
        "P1"));

    private static void Transpose(XmlText xml, Arrangement arrangement)
    {
        var semitones = arrangement.Tower.Transposition.Semitones;
        if (semitones == 0)
        {
            return;
        }

        var octaves = (int)Math.Floor(semitones / (double)Octave);
        var within = semitones - (octaves * Octave);
        xml.Element("transpose", () =>
        {
            xml.Number("diatonic", Letters[within]);
            xml.Number("chromatic", within);
            if (octaves != 0)
            {
                xml.Number("octave-change", octaves);
            }
        });
    }
}
