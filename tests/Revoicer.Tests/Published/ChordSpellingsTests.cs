using Revoicer.Chords;
using Revoicer.Tests.Chords;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Published;

/// <summary>Chord symbols as people write them in open collections, read beside the repository at test time.</summary>
public class ChordSpellingsTests
{
    private const string NoOutcome = "none of the outcomes";

    [Fact]
    public void Every_spelling_ends_in_one_of_the_outcomes_with_a_place_and_a_sentence()
    {
        var rows = SharedFiles.LinesOrSkip("reference", "chord-spellings.tsv")
            .Where(l => !l.StartsWith("# ", StringComparison.Ordinal))
            .Skip(1)
            .Select(l => l.Split('\t')[0])
            .ToArray();
        var outcomes = rows.CountBy(Outcome).ToDictionary();
        Assert.DoesNotContain(NoOutcome, outcomes.Keys);

        // Of 322 rows most are chords; a few are not for a program to decide.
        Assert.True(outcomes["chord"] + outcomes["chord with a warning"] > 270, string.Join(", ", outcomes));
        Assert.True(outcomes["refused"] < 40, string.Join(", ", outcomes));
    }

    private static string Outcome(string text) => SymbolText.Read(text) switch
    {
        Reading<ChordText>.Accepted { Value: ChordText.Chord, Warnings.Count: 0 } => "chord",
        Reading<ChordText>.Accepted { Value: ChordText.Chord } => "chord with a warning",
        Reading<ChordText>.Accepted { Value: ChordText.Alternate } => "alternate",
        Reading<ChordText>.Accepted { Value: ChordText.NoChord } => "no chord",
        Reading<ChordText>.Accepted { Value: ChordText.Words } => "words",
        Reading<ChordText>.Refused { Problems: [{ Found.Length: > 0, Expected.Length: > 0, Where.Column: > 0 }] } => "refused",
        _ => NoOutcome,
    };
}
