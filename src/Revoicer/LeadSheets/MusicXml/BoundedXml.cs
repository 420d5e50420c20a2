using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads XML of a bounded size without document types: what a DOCTYPE says is passed over, nothing is fetched.</summary>
internal static class BoundedXml
{
    /// <summary>As many bytes as a score may have when it is unpacked.</summary>
    public const int LargestBytes = 8 * 1024 * 1024;

    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Ignore,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
        MaxCharactersInDocument = LargestBytes,
    };

    // A score has some ten; what asks for its text goes down from element to element.
    private const int Deepest = 64;

    /// <summary>The document, its elements knowing their lines.</summary>
    /// <exception cref="XmlException">The bytes are no well-formed document, nest too deep, or refer to an entity.</exception>
    public static XDocument Load(byte[] bytes)
    {
        CheckDepth(bytes);
        using var reader = XmlReader.Create(new MemoryStream(bytes), Settings);
        return XDocument.Load(reader, LoadOptions.SetLineInfo);
    }

    private static void CheckDepth(byte[] bytes)
    {
        using var reader = XmlReader.Create(new MemoryStream(bytes), Settings);
        while (reader.Read())
        {
            if (reader.Depth > Deepest)
            {
                var at = (IXmlLineInfo)reader;
                throw new XmlException($"elements more than {Deepest} deep", null, at.LineNumber, at.LinePosition);
            }
        }
    }

    /// <summary>What an entry holds; null where it is larger than it may be, whatever it says of its size.</summary>
    /// <exception cref="InvalidDataException">The entry is broken.</exception>
    public static byte[]? Inflated(ZipArchiveEntry entry)
    {
        if (entry.Length > LargestBytes)
        {
            return null;
        }

        using var content = entry.Open();
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        while (content.Read(buffer) is > 0 and var read)
        {
            bytes.Write(buffer, 0, read);
            if (bytes.Length > LargestBytes)
            {
                return null;
            }
        }

        return bytes.ToArray();
    }
}
