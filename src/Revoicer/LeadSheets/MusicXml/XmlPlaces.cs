using System.Text;
using System.Xml;
using System.Xml.Linq;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Where elements stand in their file. Lines are only looked at where something is told.</summary>
internal sealed class XmlPlaces
{
    private readonly string _source;
    private readonly Lazy<string[]> _lines;
    private readonly Dictionary<int, string> _shown = [];

    public XmlPlaces(string source, byte[] bytes)
    {
        _source = source;
        _lines = new Lazy<string[]>(() =>
        {
            using var reader = new StreamReader(new MemoryStream(bytes), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
            return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        });
    }

    /// <summary>The place of an element.</summary>
    public Place Of(XElement element)
    {
        var at = (IXmlLineInfo)element;
        return At(at.LineNumber, at.LinePosition, element.Name.LocalName.Length);
    }

    /// <summary>A place by line and column, both from 1; the whole file where there is no such line.</summary>
    public Place At(int line, int column, int length)
    {
        if (line < 1 || line > _lines.Value.Length)
        {
            return Place.WholeFile(_source);
        }

        // A whole score may stand on one line: it is made fit to be shown once.
        if (!_shown.TryGetValue(line, out var text))
        {
            text = _shown[line] = new string([.. _lines.Value[line - 1].Select(c => c == '\t' || Quoted.IsVisible(c) ? c : '?')]);
        }

        var from = Math.Clamp(column, 1, text.Length + 1);
        return new Place(_source, line, from, Math.Clamp(length, 1, Math.Max(1, text.Length - from + 1)), text);
    }
}
