using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Xunit;

namespace Revoicer.Tests;

public class RevoicingStayCloseTests
{
    private const int Octave = 12;

    // What is the best already is not bettered, however dear it is to move.
    [Theory]
    [InlineData("fog-on-the-outer-pier.abc", 0.5)]
    [InlineData("fog-on-the-outer-pier.abc", 1)]
    [InlineData("lamps-on-the-quay.chords", 1)]
    public void A_draft_that_is_voiced_anew_stays_as_it_is(string file, double closeness)
    {
        var sheet = Sheet(file);
        var draft = DemoDrafts.Of(file);

        var again = Made(sheet.Moved(sheet.Key, 0, Octave * (draft.TuneOctaves ?? 0)), new OriginalNotes(Accompaniment(draft), closeness));

        Assert.Equal(Bells(draft), Bells(again));
        Assert.Equal(draft.Totals.Price, again.Totals.Price);
    }

    private static Items<HeardNote> Accompaniment(Arrangement draft) => draft.Strokes
        .Where(s => !s.IsTune)
        .Select(s => new HeardNote(s.Note, NoteName.AtFifths(0), s.Beat, Beats.OfQuarters(1), 0, 1))
        .ToItems();

    private static Items<string> Bells(Arrangement made) => made.Choices
        .Select(c => $"{c.Bar} {c.Beat} {c.Symbol}: {c.Figure} {string.Join(' ', c.Strokes.Select(s => s.Note))}")
        .ToItems();

    private static Arrangement Made(LeadSheet sheet, OriginalNotes? original) => Assert.IsType<Drafting.Made>(Revoicing.Draft(
        sheet,
        ShippedTowers.Default,
        ShippedSounds.Default,
        DraftWish.None with { Original = original },
        null,
        TestContext.Current.CancellationToken)).Arrangement;

    private static LeadSheet Sheet(string file) => Assert.IsType<Reading<LeadSheet>.Accepted>(file.EndsWith(".abc", StringComparison.Ordinal)
        ? AbcReader.Read(file, RepositoryFiles.Text("leadsheets-demo", file), SheetChoice.First)
        : ChordGridReader.Read(file, RepositoryFiles.Text("leadsheets-demo", file))).Value;
}
