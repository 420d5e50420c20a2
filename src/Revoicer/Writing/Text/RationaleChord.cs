using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Writing.Text;

/// <summary>Tells of one chord: what is struck, how it clashes, what else was weighed.</summary>
internal sealed class RationaleChord(Arrangement arrangement)
{
    private const int Indent = 2;

    private readonly KeySpelling _notes = new(arrangement.WrittenKey);
    private readonly StruckWords _struck = new(arrangement);

    /// <summary>The symbol as in the sheet, with the bass beside it where it got another, named as its bell below is.</summary>
    public string Symbol(Choice choice) => choice.SoundingBass is { } bass
        ? $"{choice.Symbol} (here with {_notes.NameOf(bass.PitchClass, choice.ToneNames)} in the bass)"
        : choice.Symbol;

    public void Write(Choice choice, TextPage page)
    {
        var at = arrangement.Tempi.At(choice.Start) + arrangement.Shift;
        var place = Sentences.Capital(PlaceNames.Of(choice.Bar, choice.Pass, choice.Beat));
        page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{place}, at {at.Value:0.0} s: {Symbol(choice)}"), hanging: Indent);
        if (choice.Pass > 1)
        {
            page.Paragraph($"Heard for the {Sentences.Ordinal(choice.Pass)} time; its clash is its own, as other bells ring on; its cost and the alternatives are for all times together.", Indent);
        }

        page.Paragraph(_struck.Of(choice), Indent);
        Tune(choice, page);
        page.Paragraph(Clash(choice), Indent);
        Quarrels(choice, page);
        if (choice.RingingOn.Count > 0)
        {
            var aside = arrangement.TuneOctaves is null ? "" : ", the tune aside";
            page.Paragraph($"Still ringing when it begins{aside}: {Sentences.List([.. choice.RingingOn.Select(n => _notes.Of(n, choice.ToneNames))])}.", Indent);
        }

        Price(choice, page);
        page.Paragraph(Alternatives(choice), Indent);
        if (choice.Former is { } former)
        {
            page.Paragraph(Before(choice, former), Indent);
        }

        if (choice.Barred is { } barred)
        {
            page.Paragraph(
                $"{Sentences.Capital(Bells(choice, barred.Notes, barred.Figure))} would cost {Sentences.Price(barred.CostsLess)} less, but a rule forbids it: {barred.Rule.TrimEnd('.')}.",
                Indent);
        }
    }

    private static string Clash(Choice choice)
    {
        var clash = choice.Clash;
        var close = choice.CloseRootClash > 0 ? $" {CloseRoot(clash.Own, choice.CloseRootClash)}" : "";
        return $"Clash {ClashWords.Of(clash)}{Parts(clash)}{close}";
    }

    private static string Parts(ClashSplit clash)
    {
        var parts = new (double Figure, string With)[]
        {
            (clash.Own, "of its own"),
            (clash.FromBefore, "with the chord before"),
            (clash.Haze, "with the haze of older chords"),
        }.Where(p => Sentences.Figure(p.Figure) != "0.0").ToArray();
        var split = parts.Length == 1
            ? $", all {parts[0].With}."
            : $": {Sentences.List([.. parts.Select(p => $"{Sentences.Figure(p.Figure)} {p.With}")])}.";
        var of = Sentences.Figure(clash.Tune) == "0.0" ? "" : "With the tune's own, ";
        return Sentences.Figure(clash.Whole) == "0.0"
            ? "."
            : $"{(parts.Length == 0 ? "." : split)} {of}{Sentences.Figure(clash.Roughness)} of it is roughness, {Sentences.Figure(clash.Contradiction)} contradiction.";
    }

    private static string CloseRoot(double own, double close)
    {
        var sentence = $"As a close triad on its root, struck together, its own would be {Sentences.Figure(close)}";
        return (own > 0 ? close / own : 0) switch
        {
            > 20 => $"{sentence}, more than 20 times as much.",
            >= 1.1 and var times => string.Create(CultureInfo.InvariantCulture, $"{sentence}, {times:0.0} times as much."),
            > 0 and < 0.9 => $"{sentence}, which is less.",
            > 0 => $"{sentence}, about the same.",
            _ => $"{sentence}.",
        };
    }

    // What rounds to nothing is left to the JSON.
    private static bool Shows(PricedTerm term) => Sentences.Price(term.Thousandths) != "0.0";

    private static string Signed(PricedTerm term) =>
        $"{term.Term} ({(term.Thousandths > 0 ? "+" : "")}{Sentences.Price(term.Thousandths)})";

    private static string Hearings(Choice choice) => choice.Hearings switch
    {
        1 => "",
        2 => " for both times it is heard",
        var times => $" for all {times} times it is heard",
    };

    private static void Price(Choice choice, TextPage page)
    {
        var terms = choice.Terms.Where(Shows).Select(t => $"{t.Term} {Sentences.Price(t.Thousandths)}").ToArray();
        if (terms.Length > 0)
        {
            page.Paragraph($"It costs {Sentences.Price(choice.Terms.Sum(t => t.Thousandths))}{Hearings(choice)}: {Sentences.List(terms)}.", Indent);
        }
    }

    private void Tune(Choice choice, TextPage page)
    {
        var notes = arrangement.Strokes
            .Where(s => s.IsTune && s.Beat >= choice.Start && s.Beat < choice.Start + choice.Length)
            .Select(s => _notes.Of(s.Note, choice.ToneNames) + (s.Limb == Limb.RightHand ? "" : $" ({LimbNames.Of(s.Limb)})"))
            .ToArray();
        if (notes.Length > 0)
        {
            page.Paragraph($"The tune {(arrangement.HasTuneBelow ? "under" : "over")} it: {string.Join(arrangement.HasTuneBelow ? ", " : " ", notes)}.", Indent);
        }
    }

    /// <summary>What is struck, with limbs and times: "Together, on the beat: ...".</summary>
    public string Struck(Choice choice) => _struck.Strokes(choice);

    private void Quarrels(Choice choice, TextPage page)
    {
        if (choice.Quarrels.Count > 0)
        {
            var words = new QuarrelWords(arrangement, choice.ToneNames);
            page.Paragraph("Most at odds:", Indent);
            foreach (var quarrel in choice.Quarrels)
            {
                page.Paragraph($"- {words.InFull(quarrel)}", Indent * 2, 2);
            }
        }
    }

    // The next best with its terms, the others with what they cost.
    private string Alternatives(Choice choice)
    {
        if (choice.Alternatives.Count == 0)
        {
            return "The rules admit no other voicing here.";
        }

        var next = choice.Alternatives[0];
        var verdict = next.CostsMore switch
        {
            > 0 and var more => $"Next best: {Bells(choice, next)}; it costs {Sentences.Price(more)} more.",
            0 => $"As good: {Bells(choice, next)}, at the same price.",
            var less => $"Better by {Sentences.Price(-less)}, but the search ended before it was tried: {Bells(choice, next)}.",
        };
        var after = choice.Alternatives.Skip(1).Select(o => $"{Bells(choice, o)} ({(o.CostsMore < 0 ? "" : "+")}{Sentences.Price(o.CostsMore)})").ToArray();
        return verdict + Sides(next.Differences) + (after.Length == 0 ? "" : $" After that: {string.Join("; ", after)}.");
    }

    private string Bells(Choice choice, Alternative other) => Bells(choice, other.Notes, other.Figure);

    private string Bells(Choice choice, Items<WrittenNote> notes, string figure)
    {
        var names = string.Join(' ', notes.Select(n => _notes.Of(n, choice.ToneNames)));
        return notes.Count switch
        {
            0 => "no bell at all",
            1 => $"{names} alone",
            _ => $"{names}, {figure}",
        };
    }

    private string Before(Choice choice, FormerChord former)
    {
        var notes = former.Notes.Count == 0 ? "no bell" : string.Join(' ', former.Notes.Select(n => _notes.Of(n, choice.ToneNames)));
        return former switch
        {
            { IsKept: true } => "It stands as it was before.",
            { CostsMore: null } => $"Before: {notes}; {FormerWords.Obstacle(former.Obstacle, n => _notes.Of(n, choice.ToneNames))}.",
            { CostsMore: >= 0 and var more } => $"Before: {notes}; it would cost {Sentences.Price(more)} more.{Sides(former.Differences)}",
            { CostsMore: { } less } => $"Before: {notes}; it would cost {Sentences.Price(-less)} less, but a rule forbids it.",
        };
    }

    private static string Sides(Items<PricedTerm> differences)
    {
        var worse = differences.Where(d => d.Thousandths > 0 && Shows(d)).Select(Signed).ToArray();
        var better = differences.Where(d => d.Thousandths < 0 && Shows(d)).Select(Signed).ToArray();
        var sides = new[] { Side("worse", worse), Side("better", better) }.Where(side => side.Length > 0).ToArray();
        return sides.Length > 0 ? $" It is {string.Join("; ", sides)}." : "";

        static string Side(string word, string[] terms) => terms.Length == 0 ? "" : $"{word} in {Sentences.List(terms)}";
    }
}
