using System.Xml.Linq;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>One bar of one part: the element that holds its music, and the measure's own attributes.</summary>
/// <param name="Music">Its children are notes, directions, harmony and the like.</param>
/// <param name="IsImplicit">Whether the bar is not counted.</param>
internal sealed record PartMeasure(XElement Music, bool IsImplicit);

/// <summary>A part of a score.</summary>
/// <param name="Id">Its id; empty where it has none.</param>
/// <param name="Name">Its name in the list of parts.</param>
/// <param name="Measures">Its bars.</param>
internal sealed record ScorePart(string Id, string Name, IReadOnlyList<PartMeasure> Measures)
{
    /// <summary>The parts of a score, whether it is told part by part or bar by bar.</summary>
    public static IReadOnlyList<ScorePart> All(XElement score)
    {
        var names = score.Elements().Where(e => e.Name.LocalName == "part-list").Elements()
            .Where(e => e.Name.LocalName == "score-part")
            .GroupBy(e => Attribute(e, "id"))
            .ToDictionary(g => g.Key, g => g.First().Child("part-name")?.Value.Trim() ?? "");
        return score.Name.LocalName == "score-timewise" ? ByBars(score, names) : [.. score.Children("part").Select(p => ByParts(p, names))];
    }

    private static ScorePart ByParts(XElement part, Dictionary<string, string> names)
    {
        var id = Attribute(part, "id");
        return new ScorePart(id, names.GetValueOrDefault(id, ""), [.. part.Children("measure").Select(m => new PartMeasure(m, IsImplicit(m)))]);
    }

    private static List<ScorePart> ByBars(XElement score, Dictionary<string, string> names) =>
    [
        .. score.Children("measure")
            .SelectMany(m => m.Children("part"), (m, p) => (Id: Attribute(p, "id"), Measure: new PartMeasure(p, IsImplicit(m))))
            .GroupBy(p => p.Id)
            .Select(g => new ScorePart(g.Key, names.GetValueOrDefault(g.Key, ""), [.. g.Select(p => p.Measure)])),
    ];

    private static bool IsImplicit(XElement measure) => Attribute(measure, "implicit") == "yes";

    private static string Attribute(XElement element, string name) => element.Attribute(name)?.Value.Trim() ?? "";
}
