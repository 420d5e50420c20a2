using System.Text;
using System.Text.Json;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;
using Xunit;

namespace Revoicer.Tests.Audits;

public class AuditTextTests
{
    // A bell that is missing (C#3), a chord of too many notes, a bell struck again too soon, a repeat, a roll.
    private const string TwoBuoys = """
        X:1
        T:Two Buoys
        M:3/4
        L:1/4
        Q:1/4=96
        K:C
        "C" [C,EGc]3 | "Dm7" [D,Fc] A !arpeggio![D,Fd] |: "A7" [^C,,E^cg]3 | "Dm" [D,DFAdf]2 F/F/ :| "G7" [G,DFGBdg]3 | "C" !arpeggio![C,Gec'] g/4g/4g/4g/4 z |]

        """;

    private static readonly AuditReport Audit = Made();

    [Fact]
    public void The_report_reads_well() => Expected.Text("two-buoys-audit", AuditText.Of(Audit));

    [Fact]
    public void Lines_are_short_and_end_alike()
    {
        var text = AuditText.Of(Audit);
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        Assert.DoesNotContain('\r', text);
    }

    [Fact]
    public void The_json_has_the_figures_of_the_report()
    {
        using var json = JsonDocument.Parse(Encoding.UTF8.GetString(AuditJson.Write(Audit)));
        var root = json.RootElement;
        Assert.Equal(AuditJson.Format, root.GetProperty("format").GetInt32());
        Assert.False(root.GetProperty("playable").GetBoolean());
        Assert.Equal(Audit.Totals.ClashDose, root.GetProperty("totals").GetProperty("clashDose").GetDouble());
        Assert.Equal(Audit.BarClashes.Select(b => b.Clash.Avoidable), root.GetProperty("bars").EnumerateArray().Select(b => b.GetProperty("clash").GetDouble()));
        Assert.Equal(
            Audit.Unplayable.Select(p => (p.Bar, p.Pass, p.Beat, p.Remedy)),
            root.GetProperty("unplayable").EnumerateArray().Select(p =>
                (p.GetProperty("bar").GetInt32(), p.GetProperty("pass").GetInt32(), p.GetProperty("beat").GetDouble(), p.GetProperty("remedy").GetString())));

        // Every stroke belongs to one chord, as nothing of a passage is told apart as its tune.
        var places = root.GetProperty("chords").EnumerateArray().SelectMany(c => c.GetProperty("strokes").EnumerateArray()).Select(s => s.GetInt32());
        Assert.Equal(Enumerable.Range(0, Audit.Strokes.Count), places.Order());
    }

    private static AuditReport Made()
    {
        var passage = Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage("two-buoys.abc", TwoBuoys, SheetChoice.First)).Value;
        return Auditing.Of(passage, passage.Sheet, ShippedTowers.Default, ShippedSounds.Default, null, cancel: TestContext.Current.CancellationToken);
    }
}
