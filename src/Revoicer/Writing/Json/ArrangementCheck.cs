using System.Globalization;
using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>
/// Whether what an arrangement file says of one thing in two places agrees: bars follow each other, a stroke is struck
/// when its beat and its lead say, a chord lies where its bar and its beat say and has the strokes of its time, every
/// stroke is the tune's or a chord's, and the price is one. What disagrees is a problem at its place.
/// </summary>
/// <param name="problems">Takes the problems.</param>
internal sealed class ArrangementCheck(JsonProblems problems)
{
    // Times come from exact beats through floating point; a microsecond is no disagreement.
    private const double Rounding = 1e-6;

    /// <summary>Tells what disagrees.</summary>
    /// <param name="made">The arrangement, all of whose members were read.</param>
    /// <param name="root">The file's object.</param>
    public void Of(Arrangement made, JsonElement root)
    {
        Bars(made.Bars, Elements(root, "bars"));
        Strokes(made, Elements(root, "strokes"));
        Choices(made, Elements(root, "choices"));
        Owners(made, Elements(root, "strokes"));
        var (price, found) = (made.Totals.Price, made.Status.Price);
        Expect(price == found, root.GetProperty("totals"), "price", $"a price of {price}", $"{found}, the price that stands in 'status'");
    }

    // The tune's strokes are no chord's; all others are struck for one. The reader gives a chord the very strokes of the list.
    private void Owners(Arrangement made, JsonElement[] where)
    {
        var inChords = made.Choices.SelectMany(c => c.Strokes).ToHashSet<Stroke>(ReferenceEqualityComparer.Instance);
        foreach (var (i, stroke) in made.Strokes.Index().Where(s => !s.Item.IsTune && !inChords.Contains(s.Item)))
        {
            var chord = made.Choices.ElementAtOrDefault(Sorted.LastUpTo(made.Choices, stroke.Beat, c => c.Start));
            Expect(
                false,
                where[i],
                "beat",
                $"a stroke of {stroke.Note} at {stroke.Beat} that is neither the tune's nor a chord's",
                chord is not null && stroke.Beat < chord.Start + chord.Length
                    ? $"it among the strokes of the chord from {chord.Start} to {chord.Start + chord.Length}"
                    : "a place in the time of a chord, and the stroke among that chord's");
        }
    }

    private void Bars(Items<ArrangedBar> bars, JsonElement[] where)
    {
        var next = Beats.Zero;
        foreach (var (i, bar) in bars.Index())
        {
            Expect(bar.Start == next, where[i], "start", $"a bar from {bar.Start}", i == 0 ? "the first bar from 0" : $"{next}, where the bar before it ends");
            next = bar.Start + bar.Length;
        }
    }

    private void Strokes(Arrangement made, JsonElement[] where)
    {
        var end = made.Bars[^1].Start + made.Bars[^1].Length;
        foreach (var (i, stroke) in made.Strokes.Index())
        {
            var at = made.Tempi.At(stroke.Beat) - stroke.Lead + made.Shift;
            Expect(stroke.Beat <= end, where[i], "beat", $"a stroke at {stroke.Beat}", $"a place up to {end}, where the last bar ends");
            Expect(
                Math.Abs((at - stroke.At).Value) <= Rounding,
                where[i],
                "at",
                Said($"a stroke at {stroke.At.Value:0.######} s"),
                Said($"{at.Value:0.######} s, as its beat, its lead, the tempi and the shift say"));
        }
    }

    private void Choices(Arrangement made, JsonElement[] where)
    {
        var end = made.Bars[^1].Start + made.Bars[^1].Length;
        foreach (var (i, choice) in made.Choices.Index())
        {
            var bar = made.Bars[Math.Max(0, Sorted.LastUpTo(made.Bars, choice.Start, b => b.Start))];
            var beat = ((choice.Start - bar.Start + bar.Offset).Quarters / bar.Meter.Beat.Quarters) + 1;
            var before = i == 0 ? Beats.Zero : made.Choices[i - 1].Start + made.Choices[i - 1].Length;
            Expect(choice.Start >= before, where[i], "start", $"a chord from {choice.Start}", $"{before} or later, where the chord before it ends");
            Expect(choice.Start + choice.Length <= end, where[i], "length", $"a chord that lasts to {choice.Start + choice.Length}", $"no longer than the bars, which end at {end}");
            Expect(choice.Bar == bar.Number, where[i], "bar", $"a chord in bar {choice.Bar}", $"{bar.Number}, the bar in which {choice.Start} lies");
            Expect(choice.Pass == bar.Pass, where[i], "pass", $"a chord of time {choice.Pass} through", $"{bar.Pass}, as its bar has it");
            Expect(Math.Abs(choice.Beat - beat) <= Rounding, where[i], "beat", Said($"a chord on beat {choice.Beat:0.######}"), Said($"{beat:0.######}, as its start says"));
            Expect(choice.Strokes.Distinct().Count() == choice.Strokes.Count, where[i], "strokes", "a stroke is named twice", "each stroke once");
            foreach (var stroke in choice.Strokes)
            {
                Expect(
                    stroke.Beat >= choice.Start && stroke.Beat < choice.Start + choice.Length && !stroke.IsTune,
                    where[i],
                    "strokes",
                    $"a chord has the stroke of {stroke.Note} at {stroke.Beat}",
                    $"strokes of its own time, {choice.Start} to {choice.Start + choice.Length}, and none of the tune");
            }

            Figure(choice, where[i]);
        }
    }

    // After the chord a foot may lead into the next bass.
    private static bool IsTogether(Choice choice)
    {
        var later = choice.Strokes.Where(s => s.Beat != choice.Start).ToArray();
        return choice.Strokes.All(s => s.Lead == Seconds.Zero) && (later.Length == 0 || later is [{ IsPedal: true }]);
    }

    // A roll leads into its beat, one stroke after another; in every other figure each stroke is on its own place.
    private void Figure(Choice choice, JsonElement where)
    {
        var leads = choice.Strokes.Select(s => s.Lead).ToArray();
        var (agrees, expected) = choice.Figure switch
        {
            "silent" => (choice.Strokes.Count == 0, "no stroke in a silent chord"),
            "together" => (IsTogether(choice), "strokes on the beat, without a lead, in a chord struck together"),
            "rolled" => (leads.Length > 1 && leads.Distinct().Count() == leads.Length, "two strokes or more, one after another, in a rolled chord"),
            _ => (leads.All(l => l == Seconds.Zero), "strokes without a lead, as the chord is not rolled"),
        };
        Expect(agrees, where, "figure", $"'{JsonFields.Short(choice.Figure)}' with strokes that lead by {string.Join(", ", leads.Select(l => l.ToString()))}", expected);
    }

    private static string Said(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);

    private static JsonElement[] Elements(JsonElement root, string name) => [.. root.GetProperty(name).EnumerateArray()];

    private void Expect(bool agrees, JsonElement where, string member, string found, string expected)
    {
        if (!agrees)
        {
            problems.Add(where.TryGetProperty(member, out var value) ? value : where, found, expected);
        }
    }
}
