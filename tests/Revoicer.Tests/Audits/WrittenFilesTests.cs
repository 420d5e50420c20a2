using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.Json;
using Xunit;

namespace Revoicer.Tests.Audits;

/// <summary>Every arrangement file that the program writes is one that it reads, whose parts agree and whose figures are those of its strokes.</summary>
public sealed class WrittenFilesTests
{
    private const string Changes =
        "X:1\nT:Ebb and Flow\nM:4/4\nL:1/4\nQ:1/4=96\nK:F\nc|:\"F\"f2 a2|\"Bb\"b2 a g|1 \"C7\"g2 e2:|2 [Q:1/4=60]\"C7\"g2 \"F\"f2|[M:3/4]\"Gm\"g2 d|\"F\"f3|]\n";

    private const string Fast = "X:1\nT:Squall\nM:4/4\nL:1/16\nQ:1/4=132\nK:C\n\"C\"cccc eeee gggg c'c'c'c'|\"G7\"bbbb gggg ffff dddd|\"C\"c8 z8|]\n";

    public static TheoryData<string, string> DemosInSounds
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var file in new[] { "*.chords", "*.abc", "*.musicxml" }.SelectMany(kind => RepositoryFiles.All("leadsheets-demo", kind)))
            {
                foreach (var sound in ShippedSounds.Names)
                {
                    all.Add(file, sound);
                }
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(DemosInSounds))]
    public void A_draft_of_a_demo_is_believed(string file, string sound) =>
        Believed(DemoDrafts.Of(file, sound), sound);

    [Fact]
    public void A_draft_over_repeats_and_changes_of_speed_is_believed() =>
        Believed(Draft(Sheet(Changes), "balanced", DraftWish.None), "balanced");

    [Fact]
    public void A_draft_under_an_eased_tune_is_believed() =>
        Believed(Draft(Sheet(Fast), "balanced", new DraftWish(EaseTune: true)), "balanced");

    [Fact]
    public void A_passage_voiced_anew_is_believed()
    {
        var file = RepositoryFiles.All(Path.Combine("leadsheets-demo", "passages"), "*.abc").First();
        var read = Assert.IsType<Reading<Passage>.Accepted>(AbcReader.Passage(Path.GetFileName(file), File.ReadAllText(file), SheetChoice.First));
        var revoicing = PassageRevoicing.Of(read.Value, null)!;
        Believed(revoicing.Told(Draft(revoicing.Sheet, "balanced", revoicing.Close(DraftWish.None, 0.5))), "balanced");
    }

    private static void Believed(Arrangement made, string sound)
    {
        var read = ArrangementJson.Read("draft.json", ArrangementJson.Write(made));
        var arrangement = Assert.IsType<Reading<Arrangement>.Accepted>(read).Value;
        Assert.Equal(made, arrangement);
        Assert.Empty(Auditing.Of(arrangement, ShippedTowers.Default, ShippedSounds.Named(sound), cancel: TestContext.Current.CancellationToken).Told);

        Assert.Equal(made.Status.Price, made.Totals.Price);
        var inChords = made.Choices.SelectMany(c => c.Strokes).ToHashSet();
        Assert.All(made.Strokes.Where(s => !s.IsTune), s => Assert.Contains(s, inChords));
    }

    private static Arrangement Draft(LeadSheet sheet, string sound, DraftWish wish) =>
        Assert.IsType<Drafting.Made>(Revoicing.Draft(sheet, ShippedTowers.Default, ShippedSounds.Named(sound), wish, null, TestContext.Current.CancellationToken)).Arrangement;

    private static LeadSheet Sheet(string abc) =>
        Assert.IsType<Reading<LeadSheet>.Accepted>(AbcReader.Read("sheet.abc", abc, SheetChoice.First)).Value;
}
