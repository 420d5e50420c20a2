using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes chord symbols as harmony elements: the kind that is nearest, the degrees that make it exact, and the sheet's own symbol as its text.</summary>
internal sealed class HarmonyWriter(XmlText xml)
{
    /// <summary>The symbol at a place, so far behind the note that follows.</summary>
    public void Write(ChordMark mark, Beats offset)
    {
        if (mark.Symbol is null)
        {
            NoChord(offset);
        }
        else if (ChordSymbolReader.Read(mark.Symbol, Place.WholeFile("")) is Reading<ChordText>.Accepted { Value: ChordText.Chord { Symbol: var symbol } })
        {
            Chord(symbol, offset);
        }
        else
        {
            // An arrangement file may hold symbols that no reader knows.
            xml.Element("direction", () =>
            {
                xml.Element("direction-type", () => xml.Text("words", mark.Symbol));
                Offset(offset);
                xml.Text("staff", "1");
            }, "placement", "above");
        }
    }

    private void Chord(ChordSymbol symbol, Beats offset) => xml.Element("harmony", () =>
    {
        var (kind, changes) = ChordKind.Nearest([.. symbol.Tones.Select(t => t.Degree)]);
        xml.Element("root", () => Name("root", symbol.Root));
        xml.Text("kind", kind.Name, "text", symbol.Suffix);
        if (symbol.Bass is { } bass)
        {
            xml.Element("bass", () => Name("bass", bass));
        }

        foreach (var change in changes)
        {
            xml.Element("degree", () =>
            {
                xml.Number("degree-value", change.Number);
                xml.Number("degree-alter", change.Alteration);
                xml.Text("degree-type", change.Type.ToString().ToLowerInvariant());
            }, "print-object", "no");
        }

        Offset(offset);
    });

    // A chord without root is a function of none; the file wants one or the other (harmony-chord of MusicXML 4.0).
    private void NoChord(Beats offset) => xml.Element("harmony", () =>
    {
        xml.Element("root", () => xml.Text("root-step", "C", "text", ""));
        xml.Text("kind", "none", "text", "N.C.");
        Offset(offset);
    });

    private void Name(string element, NoteName name)
    {
        xml.Text($"{element}-step", name.Letter.ToString());
        if (name.Alteration != 0)
        {
            xml.Number($"{element}-alter", name.Alteration);
        }
    }

    private void Offset(Beats offset)
    {
        if (offset > Beats.Zero)
        {
            xml.Length("offset", offset);
        }
    }
}
