using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>
/// Reads melody and chord symbols from MusicXML 3.0 to 4.0 (W3C Music Notation Community Group), plain or compressed;
/// docs/files.md says what is read, passed over and refused.
/// </summary>
public static class MusicXmlReader
{
    private const int MostParts = 200;

    /// <summary>Reads one voice of one part, and the chord symbols over it.</summary>
    /// <param name="fileName">The file's name as messages give it; without its ending it is the title where there is none.</param>
    /// <param name="file">
    /// The file's bytes, unpacked at most 8 MiB; at most 20,000 bars and 100,000 quarters with repeats unfolded.
    /// </param>
    /// <param name="voice">
    /// Which voice has the tune: a part by its id or name, or a voice of the first part by its number; null for the top
    /// voice of the first part.
    /// </param>
    /// <returns>The sheet with warnings, or refused with all problems (the first hundred) in order of place.</returns>
    public static Reading<LeadSheet> Read(string fileName, byte[] file, string? voice = null) => Read(
        fileName,
        file,
        (score, parts, places, remarks) => TuneChoice.Of(parts, voice) is { } choice
            ? SheetAssembly.Of(fileName, score, parts, choice, places, remarks)
            : NoSuchVoice(parts, voice!, Place.WholeFile(fileName), remarks));

    /// <summary>Reads all voices of all parts as music that exists in full.</summary>
    /// <param name="fileName">As for a sheet.</param>
    /// <param name="file">As for a sheet; at most 64 voices.</param>
    /// <returns>
    /// The passage with warnings: its bars are those of the first part, its voices are called by their parts
    /// ("Carillon, voice 2"), its chord symbols are those of the first part that has any. Refused with all problems, as a
    /// sheet is, and where a part has notes in bars that the first part does not have.
    /// </returns>
    public static Reading<Passage> Passage(string fileName, byte[] file) => Read(
        fileName, file, (score, parts, places, remarks) => PassageAssembly.Of(fileName, score, parts, places, remarks));

    private static Reading<T> Read<T>(string fileName, byte[] file, Func<XElement, ScorePart[], XmlPlaces, Remarks, T?> read)
        where T : class
    {
        var remarks = new Remarks();
        var value = Value(fileName, file, read, remarks);
        return remarks.HasProblems || value is null
            ? new Reading<T>.Refused(remarks.Problems)
            : new Reading<T>.Accepted(value, remarks.Warnings);
    }

    private static T? Value<T>(string fileName, byte[] file, Func<XElement, ScorePart[], XmlPlaces, Remarks, T?> read, Remarks remarks)
        where T : class
    {
        var whole = Place.WholeFile(fileName);
        var bytes = ZippedScore.IsZip(file) ? ZippedScore.Take(file, whole, remarks) : file;
        if (bytes is null || bytes.Length > BoundedXml.LargestBytes)
        {
            remarks.Refuse(bytes is null ? [] : [new Problem(whole, string.Create(CultureInfo.InvariantCulture, $"a file of {bytes.Length} bytes"), $"at most {BoundedXml.LargestBytes}")]);
            return null;
        }

        var places = new XmlPlaces(fileName, bytes);
        if (Root(bytes, places, remarks) is not { } score)
        {
            return null;
        }

        var parts = ScorePart.All(score).Where(p => p.Measures.Count > 0).Take(MostParts).ToArray();
        if (parts.Length == 0)
        {
            remarks.Refuse(places.Of(score), "the score has no music", "a part with measures");
            return null;
        }

        return read(score, parts, places, remarks);
    }

    private static XElement? Root(byte[] bytes, XmlPlaces places, Remarks remarks)
    {
        try
        {
            var root = BoundedXml.Load(bytes).Root!;
            if (root.Name.LocalName is "score-partwise" or "score-timewise")
            {
                return root;
            }

            remarks.Refuse(places.Of(root), $"'{Quoted.Text(root.Name.LocalName)}' is no score", "score-partwise or score-timewise");
        }
        catch (XmlException e)
        {
            var where = places.At(Math.Max(1, e.LineNumber), e.LinePosition, 1);
            remarks.Refuse(where, $"the file is no whole XML document: {Sentence(e)}", "a MusicXML file as a notation program exports it");
        }

        return null;
    }

    // The reader's own words without the place at their end, which stands before the message.
    private static string Sentence(XmlException e)
    {
        var end = e.Message.IndexOf(" Line ", StringComparison.Ordinal);
        return new string([.. (end > 0 ? e.Message[..end] : e.Message).TrimEnd('.').Take(200).Select(c => Quoted.IsVisible(c) ? c : '?')]);
    }

    private static LeadSheet? NoSuchVoice(ScorePart[] parts, string voice, Place whole, Remarks remarks)
    {
        var voices = TuneChoice.VoicesOf(parts[0]).Take(10);
        var names = parts.Take(10).Select(p => p.Name.Length > 0 ? p.Name : p.Id);
        remarks.Refuse(
            whole,
            $"the score has no voice '{Quoted.Text(voice)}'",
            $"a voice of the first part ({Listed(voices)}) or a part ({Listed(names)})");
        return null;
    }

    private static string Listed(IEnumerable<string> names) => string.Join(", ", names.Select(Quoted.Text));
}
