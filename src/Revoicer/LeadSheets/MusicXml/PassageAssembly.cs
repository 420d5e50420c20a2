using System.Xml.Linq;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Makes a passage of all voices of all parts.</summary>
internal static class PassageAssembly
{
    /// <summary>The passage; null where a problem was told.</summary>
    public static Passage? Of(string fileName, XElement score, IReadOnlyList<ScorePart> parts, XmlPlaces places, Remarks remarks)
    {
        var voices = Voices(parts);
        var first = voices.FirstOrDefault() ?? new NamedVoice("1", new TuneChoice(0, "1"));
        if (SheetAssembly.Joined(score, parts, first.Choice, places, remarks, tellOthers: false) is not { } joined)
        {
            return null;
        }

        var sheet = SheetAssembly.Sheet(fileName, score, joined, remarks);
        var fitting = new VoiceFitting(sheet, remarks);
        var read = new List<PassageVoice> { new(first.Name, sheet.Bars.Select(b => b.Notes).ToItems()) };
        foreach (var voice in fitting.AtMost([.. voices.Skip(1)], places.Of(score)))
        {
            if (Fit(voice, parts, joined, fitting, places, remarks) is { } fitted)
            {
                read.Add(fitted);
            }
        }

        return fitting.Passage(read);
    }

    private static PassageVoice? Fit(NamedVoice voice, IReadOnlyList<ScorePart> parts, JoinedMeasures joined, VoiceFitting fitting, XmlPlaces places, Remarks remarks)
    {
        var own = new Remarks();
        var measures = PartReader.Read(parts[voice.Choice.Part], voice.Choice.Voice, places, own);
        remarks.TakeNew(own);
        if (own.HasProblems)
        {
            return null;
        }

        // A bar is as long as its longest part.
        foreach (var (measure, longest) in measures.Zip(joined.Measures))
        {
            measure.Length = longest.Length;
        }

        IReadOnlyList<ReadMeasure> whole = [.. measures, .. joined.Measures.Skip(measures.Count).Select(m => new ReadMeasure(m.Where) { Length = m.Length })];
        return SheetAssembly.IsEndless(whole, joined.Order, remarks)
            ? null
            : fitting.Fit(voice.Name, [.. measures.Select(m => new VoiceBar(m.Length, SheetAssembly.NotesOf(m).ToItems(), m.Where))]);
    }

    // Parts may share a name, or have none.
    private static NamedVoice[] Voices(IReadOnlyList<ScorePart> parts)
    {
        string[] names = [.. parts.Select(p => string.Join(' ', p.Name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
        var shared = names.GroupBy(n => n).Where(g => g.Count() > 1).Select(g => g.Key).ToHashSet();
        return [.. parts.Index().SelectMany(p => VoicesOf(p.Item, p.Index, NameOf(names[p.Index], p.Index, shared)))];
    }

    private static string NameOf(string name, int index, HashSet<string> shared) =>
        name.Length == 0 ? FormattableString.Invariant($"part {index + 1}")
        : shared.Contains(name) ? FormattableString.Invariant($"{name} (part {index + 1})")
        : name;

    private static IEnumerable<NamedVoice> VoicesOf(ScorePart part, int index, string name)
    {
        var voices = TuneChoice.VoicesOf(part);
        return voices.Select(v => new NamedVoice(voices.Count == 1 ? name : $"{name}, voice {v}", new TuneChoice(index, v)));
    }

    private sealed record NamedVoice(string Name, TuneChoice Choice);
}
