using System.Globalization;
using System.Numerics;
using System.Text;
using System.Xml;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>Writes elements in few words.</summary>
/// <param name="xml">The document.</param>
/// <param name="divisions">How many parts of a quarter durations are counted in.</param>
internal sealed class XmlText(XmlWriter xml, BigInteger divisions)
{
    /// <summary>How many parts of a quarter durations are counted in.</summary>
    public string Divisions => divisions.ToString(CultureInfo.InvariantCulture);

    /// <summary>An element with attributes, given as name and value in turn, and what stands inside.</summary>
    public void Element(string name, Action inside, params ReadOnlySpan<string> attributes)
    {
        Start(name, attributes);
        inside();
        xml.WriteEndElement();
    }

    /// <summary>An element with nothing but attributes.</summary>
    public void Empty(string name, params ReadOnlySpan<string> attributes)
    {
        Start(name, attributes);
        xml.WriteEndElement();
    }

    /// <summary>An element with a text.</summary>
    public void Text(string name, string text, params ReadOnlySpan<string> attributes)
    {
        Start(name, attributes);
        xml.WriteString(Clean(text));
        xml.WriteEndElement();
    }

    /// <summary>An element with a whole number.</summary>
    public void Number(string name, long number) => Text(name, number.ToString(CultureInfo.InvariantCulture));

    /// <summary>An element with a length in divisions.</summary>
    public void Length(string name, Beats length) =>
        Text(name, (divisions * length.Numerator / length.Denominator).ToString(CultureInfo.InvariantCulture));

    private void Start(string name, ReadOnlySpan<string> attributes)
    {
        xml.WriteStartElement(name);
        for (var i = 0; i < attributes.Length; i += 2)
        {
            xml.WriteAttributeString(attributes[i], Clean(attributes[i + 1]));
        }
    }

    // What XML 1.0 cannot hold is shown as the replacement character.
    private static string Clean(string text)
    {
        if (text.All(XmlConvert.IsXmlChar))
        {
            return text;
        }

        var clean = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            clean.Append(rune.Value > char.MaxValue || XmlConvert.IsXmlChar((char)rune.Value) ? rune.ToString() : "\uFFFD");
        }

        return clean.ToString();
    }
}
