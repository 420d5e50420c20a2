using System.Xml;
using System.Xml.Schema;
using Xunit;

namespace Revoicer.Tests.Writing.MusicXml;

/// <summary>Holds files against the schema of MusicXML 4.0 (W3C Community Final Specification Agreement), ../shared/reference/musicxml-4.0.</summary>
internal static class MusicXmlSchema
{
    private static readonly Lazy<XmlSchemaSet?> Loaded = new(Load);

    /// <summary>Why a test is skipped where the schema is not there.</summary>
    public const string Absent = "../shared/reference/musicxml-4.0 is absent";

    /// <summary>Whether the schema is there; a law cannot be skipped from within.</summary>
    public static bool IsThere => Loaded.Value is not null;

    /// <summary>What the schema says against a file, each with its line; skips the test where the schema is absent.</summary>
    public static IReadOnlyList<string> Faults(byte[] file)
    {
        Assert.SkipWhen(Loaded.Value is null, Absent);
        var faults = new List<string>();
        var settings = new XmlReaderSettings { Schemas = Loaded.Value!, ValidationType = ValidationType.Schema };
        settings.ValidationEventHandler += (_, e) => faults.Add($"line {e.Exception.LineNumber}: {e.Message}");
        using var reader = XmlReader.Create(new MemoryStream(file), settings);
        while (reader.Read())
        {
        }

        return faults;
    }

    private static XmlSchemaSet? Load()
    {
        if (SharedFiles.Find("reference", "musicxml-4.0", "musicxml.xsd") is not { } file)
        {
            return null;
        }

        // The schema imports its neighbours by bare names.
        var schemas = new XmlSchemaSet { XmlResolver = new XmlUrlResolver() };
        using var reader = XmlReader.Create(file, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        schemas.Add(null, reader);
        schemas.Compile();
        return schemas;
    }
}
