using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>A text put together from pieces of tunes, mostly senseless.</summary>
public sealed record TuneText(string Text);

/// <summary>A note, or a rest without letter, of so many sixteenths.</summary>
public sealed record ModelNote(char? Letter, int Sixteenths);

/// <summary>A tune of whole bars.</summary>
public sealed record ModelTune(Meter Meter, IReadOnlyList<IReadOnlyList<ModelNote>> Bars);

/// <summary>Generators for tunes.</summary>
public static class TuneGens
{
    private static readonly string[] Pieces =
    [
        "|", "||", "|:", ":|", "::", "|]", "[|", "|1", ":|2", "[1,3", "[1-3", "C", "^c'", "_B,", "=", "[CEG]", "[", "]", "2", "/", "3/2", "/3", "999999999999",
        "4096", "/4096", "-", ">", "<<", "(3", "(5:4:6", "(", ")", "z", "Z4", "Z", "X9999", "{g}", "{", "\"C7\"", "\"(E7)\"", "\"", "\"^x\"", "\"H\"",
        "!fermata!", "!", "+", "H", "J", "[K:G]", "[K:", "[M:3/4]", "[M:none]", "[L:1/512]", "[L:4/1]", "[V:2]", "[V:1]", "[P:A]", "[Q:1/4=90]", "[Q:x]", "[r:x]",
        "&", "\\", "\n", "\r\n", "\n\n", "\nK:D mix =c clef=bass-8\n", "\nP:A\n", "\nV:2\n", "\nX:2\nK:C\n", "\nw:la\n", "% x\n", "%%begintext\n", "%%endtext\n", " ", "\t", "\0", "\uD834", "y", "$",
    ];

    private static readonly string[] Heads =
    [
        "", "X:1\nK:C\n", "X:1\nM:4/4\nL:1/4\nK:C\n", "X:1\nM:none\nK:none\n", "X:1\nP:(A2B)3\nM:6/8\nK:G\nP:A\n",
        "X:1\nP:((((A9999)9999)9999)9999)\nM:C|\nK:HP\nP:A\n", "X:1\nM:3/4\nV:1\nV:2\nK:Am\n",
    ];

    private static readonly Meter[] Meters = [new(2, 4), new(3, 4), new(4, 4), new(6, 8), new(9, 8), new(2, 2), new(5, 8)];

    public static Arbitrary<TuneText> AnyText() =>
        (from head in Gen.Elements(Heads)
         from pieces in Gen.Elements(Pieces).ArrayOf()
         select new TuneText(head + string.Concat(pieces))).ToArbitrary();

    public static Arbitrary<ModelTune> Tunes() =>
        (from meter in Gen.Elements(Meters)
         from bars in Bar((int)(meter.Bar * 4).Numerator).NonEmptyListOf()
         select new ModelTune(meter, [.. bars])).ToArbitrary();

    private static Gen<IReadOnlyList<ModelNote>> Bar(int sixteenths) =>
        from cuts in Gen.Choose(1, sixteenths - 1).ListOf(4)
        from letters in Gen.Elements<char?>('C', 'D', 'E', 'F', 'G', 'A', 'B', null).ListOf(5)
        let places = cuts.Append(0).Append(sixteenths).Distinct().Order().ToArray()
        select (IReadOnlyList<ModelNote>)[.. places.Skip(1).Select((place, i) => new ModelNote(letters[i], place - places[i]))];
}

public class AbcLaws
{
    [Law(Arbitrary = [typeof(TuneGens)], MaxTest = 2000)]
    public void Any_text_ends_in_a_sheet_or_in_problems_with_a_place(TuneText tune, string? any)
    {
        AssertOutcome(tune.Text);
        AssertOutcome(any ?? "");
        AssertOutcome(AbcText.Head + any);
    }

    [Law(Arbitrary = [typeof(TuneGens)])]
    public void Any_slip_in_a_tune_ends_in_a_sheet_or_in_problems_with_a_place(ModelTune tune, int at, char typed)
    {
        var text = Text(tune);
        at = Math.Abs(at % text.Length);
        AssertOutcome(text[..at]);
        AssertOutcome(text.Remove(at, 1));
        AssertOutcome(text.Insert(at, typed.ToString()));
        AssertOutcome(text[..at] + (char)(' ' + (typed % 95)) + text[(at + 1)..]);
    }

    [Law(Arbitrary = [typeof(TuneGens)])]
    public void A_tune_written_out_reads_back(ModelTune tune)
    {
        var sheet = AbcText.Sheet(Text(tune));
        var expected = new List<(Beats, Beats, char)>();
        var at = Beats.Zero;
        foreach (var note in tune.Bars.SelectMany(b => b))
        {
            var length = Beats.OfQuarters(note.Sixteenths, 4);
            expected.AddRange(note.Letter is { } letter ? [(at, length, letter)] : []);
            at += length;
        }

        Assert.Equal(expected, HeardTune.Of(sheet).Select(n => (n.Start, n.Length, n.Name.ToString()[0])));
        Assert.Equal(at, sheet.Length);
        Assert.All(sheet.Bars, bar => Assert.Equal(tune.Meter.Bar, bar.Length));
        Assert.Equal(Enumerable.Range(1, tune.Bars.Count), sheet.Bars.Select(b => b.Number));
    }

    [Law(Arbitrary = [typeof(TuneGens)])]
    public void A_tune_in_another_unit_is_the_same_tune(ModelTune tune)
    {
        var eighths = Text(tune).Replace("L:1/16", "L:1/8", StringComparison.Ordinal).Replace(" ", "/2 ", StringComparison.Ordinal);

        Assert.Equal(HeardTune.Of(AbcText.Sheet(Text(tune))), HeardTune.Of(AbcText.Sheet(eighths)));
    }

    private static string Text(ModelTune tune)
    {
        var bars = tune.Bars.Select(bar => string.Concat(bar.Select(n =>
            string.Create(CultureInfo.InvariantCulture, $"{n.Letter ?? 'z'}{n.Sixteenths} "))));
        return $"X:1\nT:Kelp\nM:{tune.Meter}\nL:1/16\nK:C\n{string.Join("|\n", bars)}|]\n";
    }

    private static void AssertOutcome(string text)
    {
        switch (AbcText.Read(text))
        {
            case Reading<LeadSheet>.Accepted accepted:
                Assert.All(accepted.Value.Bars, AssertSound);
                Assert.All(accepted.Warnings, AssertPlaced);
                Assert.NotEmpty(accepted.Value.Played);
                break;
            case Reading<LeadSheet>.Refused refused:
                Assert.NotEmpty(refused.Problems);
                Assert.All(refused.Problems, AssertPlaced);
                break;
        }
    }

    private static void AssertPlaced(Problem problem)
    {
        Assert.InRange(problem.Where.Column, 0, problem.Where.LineText.Length + 1);
        Assert.NotEmpty(problem.ToString());
    }

    // Chords cover the bar, notes lie within it and in order.
    private static void AssertSound(WrittenBar bar)
    {
        var at = Beats.Zero;
        foreach (var span in bar.Chords)
        {
            Assert.Equal(at, span.Start);
            Assert.True(span.Length > Beats.Zero);
            at += span.Length;
        }

        Assert.Equal(bar.Length, at);
        Assert.True(bar.Offset >= Beats.Zero);
        Assert.All(bar.Notes, n => Assert.True(n.Length > Beats.Zero && n.Start + n.Length <= bar.Length));
        Assert.Equal(bar.Notes.OrderBy(n => n.Start).ThenBy(n => n.Note), bar.Notes);
    }
}
