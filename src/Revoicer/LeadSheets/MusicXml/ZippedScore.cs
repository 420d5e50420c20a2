using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>
/// Takes the score out of a compressed file (.mxl): a ZIP archive whose META-INF/container.xml names it. Nothing is
/// unpacked to disk, so that no path in it leads anywhere.
/// </summary>
internal static class ZippedScore
{
    private const string Container = "META-INF/container.xml";
    private const int MostEntries = 1_000;

    /// <summary>Whether a file begins as ZIP archives do.</summary>
    public static bool IsZip(ReadOnlySpan<byte> file) => file.StartsWith("PK"u8);

    /// <summary>The score's bytes; null, with a problem told, where there is none to be had.</summary>
    /// <param name="file">The archive.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static byte[]? Take(byte[] file, Place whole, Remarks remarks)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
            if (archive.Entries.Count > MostEntries)
            {
                remarks.Refuse(whole, $"an archive of {archive.Entries.Count} files", $"at most {MostEntries}");
                return null;
            }

            return Score(archive, whole, remarks) is { } score ? Inflate(score, whole, remarks) : null;
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException)
        {
            remarks.Refuse(whole, "the archive is broken", "a whole .mxl file; export it again");
            return null;
        }
    }

    // The entry that the container names; where it names none, the only score there is.
    private static ZipArchiveEntry? Score(ZipArchive archive, Place whole, Remarks remarks)
    {
        var named = archive.GetEntry(Container) is { } container ? RootFile(container) : null;
        if (named is not null && archive.GetEntry(named) is { } entry)
        {
            return entry;
        }

        var scores = archive.Entries.Where(e => IsScoreName(e.FullName)).Take(2).ToArray();
        if (scores.Length == 1)
        {
            remarks.Warn(whole, $"{Container} names no score of the archive; '{Quoted.Text(scores[0].FullName)}' is read, the only one inside", "a rootfile that is inside");
            return scores[0];
        }

        remarks.Refuse(
            whole,
            $"{Container} names no score of the archive, and {(scores.Length == 0 ? "none is" : "several are")} inside",
            "one file that ends in .musicxml or .xml");
        return null;
    }

    private static bool IsScoreName(string name) =>
        !name.StartsWith("META-INF/", StringComparison.OrdinalIgnoreCase)
        && !name.StartsWith("__MACOSX/", StringComparison.Ordinal)
        && (name.EndsWith(".xml", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".musicxml", StringComparison.OrdinalIgnoreCase));

    // The first rootfile is the score (MusicXML 4.0, container.xsd).
    private static string? RootFile(ZipArchiveEntry container)
    {
        if (BoundedXml.Inflated(container) is not { } bytes)
        {
            return null;
        }

        try
        {
            return BoundedXml.Load(bytes).Descendants().FirstOrDefault(e => e.Name.LocalName == "rootfile")?.Attribute("full-path")?.Value;
        }
        catch (XmlException)
        {
            return null;
        }
    }

    private static byte[]? Inflate(ZipArchiveEntry entry, Place whole, Remarks remarks)
    {
        var bytes = BoundedXml.Inflated(entry);
        if (bytes is null)
        {
            remarks.Refuse(whole, $"the score inside has more than {BoundedXml.LargestBytes} bytes", "at most so many");
        }

        return bytes;
    }
}
