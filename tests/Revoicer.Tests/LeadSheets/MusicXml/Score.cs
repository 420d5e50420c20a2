using System.IO.Compression;
using System.Text;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.MusicXml;

/// <summary>Scores as short texts, and what is read of them.</summary>
internal static class Score
{
    public const string Attributes = "<attributes><divisions>2</divisions><key><fifths>0</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time></attributes>";

    /// <summary>A score of one part; each measure is given by what stands inside it.</summary>
    public static string Of(params string[] measures) => OfParts(Part("P1", measures));

    public static string OfParts(params string[] parts) =>
        $"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\"><part-name>Tune</part-name></score-part><score-part id=\"P2\"><part-name>Chords</part-name></score-part></part-list>\n{string.Concat(parts)}</score-partwise>\n";

    public static string Part(string id, params string[] measures) =>
        $"<part id=\"{id}\">\n{string.Join('\n', measures.Select((m, i) => m.StartsWith("<measure", StringComparison.Ordinal) ? m : $"<measure number=\"{i + 1}\">{m}</measure>"))}\n</part>";

    /// <summary>"C5" as a note of so many eighths, or a rest for "r".</summary>
    public static string Note(string pitch, int eighths = 8, string more = "", string before = "")
    {
        var alter = pitch.Length > 2 ? pitch[1] == '#' ? "<alter>1</alter>" : "<alter>-1</alter>" : "";
        var what = pitch == "r" ? "<rest/>" : $"<pitch><step>{pitch[0]}</step>{alter}<octave>{pitch[^1]}</octave></pitch>";
        return $"<note>{before}{what}<duration>{eighths}</duration>{more}</note>";
    }

    public static string Chord(string root, string kind = "major", string more = "", string text = "") =>
        $"<harmony><root><root-step>{root[0]}</root-step>{(root.Length > 1 ? $"<root-alter>{(root[1] == '#' ? 1 : -1)}</root-alter>" : "")}</root><kind{(text.Length > 0 ? $" text=\"{text}\"" : "")}>{kind}</kind>{more}</harmony>";

    public static string Degree(int value, int alter, string type) =>
        $"<degree><degree-value>{value}</degree-value><degree-alter>{alter}</degree-alter><degree-type>{type}</degree-type></degree>";

    public static LeadSheet Sheet(string text, string? voice = null) => Accepted(text, voice).Value;

    public static Reading<LeadSheet>.Accepted Accepted(string text, string? voice = null) => Accepted(Encoding.UTF8.GetBytes(text), voice);

    public static Reading<LeadSheet>.Accepted Accepted(byte[] file, string? voice = null) => MusicXmlReader.Read("quay.musicxml", file, voice) switch
    {
        Reading<LeadSheet>.Accepted accepted => accepted,
        var refused => throw new ArgumentException(string.Concat(Assert.IsType<Reading<LeadSheet>.Refused>(refused).Problems), nameof(file)),
    };

    public static Problem Problem(string text, string? voice = null) => Problem(Encoding.UTF8.GetBytes(text), voice);

    public static Problem Problem(byte[] file, string? voice = null) =>
        Assert.IsType<Reading<LeadSheet>.Refused>(MusicXmlReader.Read("quay.musicxml", file, voice)).Problems[0];

    /// <summary>"1.0 C; 1.2 G7": written bar and place in quarters, for every stretch that begins with another chord.</summary>
    public static string Symbols(LeadSheet sheet) => string.Join("; ", sheet.Bars
        .SelectMany((b, i) => b.Chords, (b, c) => $"{b.Number}.{c.Start} {(c.Symbol is null ? "-" : c.Symbol.ToString())}"));

    /// <summary>"1 2 1 3": the numbers of the bars as heard.</summary>
    public static string Heard(LeadSheet sheet) => string.Join(' ', sheet.Played.Select(p => sheet.Bars[p.Written].Number));

    /// <summary>"0 C5 1; 2 Eb5 1/2": the tune as heard.</summary>
    public static string Tune(LeadSheet sheet) => string.Join("; ", HeardTune.Of(sheet).Select(n => $"{n.Start} {n.Name}{(n.Note.Midi - n.Name.Alteration) / 12 - 1} {n.Length}"));

    /// <summary>A compressed file with the given entries.</summary>
    public static byte[] Zip(params (string Name, byte[] Content)[] entries)
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in entries)
            {
                using var entry = archive.CreateEntry(name).Open();
                entry.Write(content);
            }
        }

        return stream.ToArray();
    }
}
