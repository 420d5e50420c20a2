using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Comparisons;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>A trade-off as a table in plain text, one draft a line, and under it what each gives up.</summary>
public static class TradeOffText
{
    private const int Indent = 2;

    // Smaller differences of a term are not told, nor more than so many.
    private const long Worth = 1000;
    private const int MostTold = 3;

    /// <summary>The text; lines of the table are as long as they need, each ends in \n.</summary>
    /// <param name="tradeOff">The trade-off; it has a draft.</param>
    public static string Of(TradeOff tradeOff)
    {
        var points = tradeOff.Points;
        return Head(tradeOff) + "\n" + PlainTable.Of(Columns(tradeOff, points)) + "\n" + Foot(tradeOff, points) + Steps(tradeOff, points);
    }

    private static string Head(TradeOff tradeOff)
    {
        var comparison = new Comparison(tradeOff.Title, [tradeOff.Points[0].Compared], []);
        return ComparisonText.Head(comparison)
            + VisibleText.OneLine($"sound: {tradeOff.AsItStands.Setting.Sound}, but for carry: it has no price, and a rule says how far every chord of 0.8 s and more carries at least") + "\n";
    }

    private static List<PlainTable.Column> Columns(TradeOff tradeOff, Items<TradeOffPoint> points)
    {
        Row[] rows =
        [
            .. points.Select((p, i) => new Row((i + 1).ToString(CultureInfo.InvariantCulture), p.Asked, p.Compared)),
            .. tradeOff.AsItStands.Figures is null ? [] : new[] { new Row("as it is", null, tradeOff.AsItStands) },
        ];
        var (least, most) = (tradeOff.Clash(points[0].Compared.Figures!), points[^1].Compared.Figures!.Carry.Value);
        return
        [
            new([""], false, [.. rows.Select(r => r.Name)]),
            Column(["every chord", "at least"], r => r.Asked is { } asked ? Decibel(asked.Value) : "-"),
            Column(["weakest", "chord"], r => r.Made.WeakestCarry is { } weakest ? Decibel(weakest.Value) : "-"),
            Column(["carry on", "the mean"], r => Decibel(r.Figures.Carry.Value)),
            Column(["below the", "farthest"], r => Decibel(most - r.Figures.Carry.Value)),
            Column(["clash", "dose"], r => Sentences.Figure(tradeOff.Clash(r.Figures))),
            Column(["above the", "least"], r => Percent(tradeOff.Clash(r.Figures), least)),
            Column(["median", "clash"], r => Sentences.Figure(r.Figures.MedianClash)),
            Column(["", "price"], r => Sentences.Price(r.Compared.PriceWithoutCarry)),
            Column(["", "effort"], r => r.Figures.Effort is { } effort ? Sentences.Figure(effort) : "-"),
            Column(["", "rolls"], r => Whole(r.Figures.Rolls)),
            Column(["inver-", "sions"], r => Whole(r.Figures.Inversions)),
            Column(["", "strokes"], r => Whole(r.Figures.Strokes)),
            Column(["of them", "pedals"], r => Whole(r.Made.Arrangement.Strokes.Count(s => s.IsPedal && !s.IsTune))),
            new(["", "search"], false, [.. rows.Select(r => ComparisonText.ShortStatus(r.Made.Arrangement.Status))]),
        ];

        PlainTable.Column Column(string[] heading, Func<Row, string> cell) => new([.. heading], true, [.. rows.Select(cell)]);
    }

    private static string Foot(TradeOff tradeOff, Items<TradeOffPoint> points)
    {
        var lines = new List<string> { Sample(tradeOff, points) };
        lines.AddRange(tradeOff.TuneMoves ? ["the tune lies in different places, so what it clashes with itself is counted in"] : []);
        lines.Add("each is the cheapest draft that keeps its rule, carry itself unpriced: clash is the largest part of the price, not all of it");
        lines.Add("where no voicing of a chord carries so far, the rule takes the one that carries farthest");
        lines.AddRange(UnheardText.Of(tradeOff.Unheard) is { } unheard ? [unheard] : []);
        lines.AddRange(tradeOff.Failed.Select(f => $"{(f.Asked is { } asked ? $"at least {asked}" : "without asking")}: no draft: {string.Join("; ", f.Compared.Obstacles)}"));
        return string.Concat(lines.Select(line => VisibleText.OneLine(line) + "\n"));
    }

    private static string Sample(TradeOff tradeOff, Items<TradeOffPoint> points)
    {
        if (tradeOff.Drafts.Count == 1)
        {
            return tradeOff.Drafts[0].Made?.WeakestCarry is null
                ? "there is nothing to trade: no chord lasts 0.8 s, and the rule leaves quicker ones alone"
                : $"there is nothing to trade: every chord carries the {tradeOff.Target} at which the sound aims without being asked to";
        }

        string[] left =
        [
            .. tradeOff.Same == 0 ? [] : new[] { $"{(tradeOff.Same == 1 ? "one strikes" : $"{tradeOff.Same} strike")} the same as another" },
            .. tradeOff.Outdone == 0 ? [] : new[] { $"{(tradeOff.Outdone == 1 ? "one is" : $"{tradeOff.Outdone} are")} left out as another carries no less and clashes no more" },
        ];
        return $"a sample: {points.Count} of {tradeOff.Drafts.Count} drafts, at even steps up to the sound's target of {tradeOff.Target}"
            + (left.Length == 0 ? "" : $" ({string.Join(", ", left)})") + "; between two of them there are others";
    }

    // From each draft to the next: what it gains, and what it gives up for it.
    private static string Steps(TradeOff tradeOff, Items<TradeOffPoint> points)
    {
        if (points.Count < 2)
        {
            return "";
        }

        var page = new TextPage();
        page.Blank();
        page.Title("What each gives up", '-');
        for (var i = 1; i < points.Count; i++)
        {
            page.Paragraph($"{i + 1} beside {i}: {Step(tradeOff, points[i - 1].Compared, points[i].Compared)}", 0, Indent);
        }

        return page.ToString();
    }

    private static string Step(TradeOff tradeOff, ComparedSetting before, ComparedSetting after)
    {
        var (made, next) = (before.Made!, after.Made!);
        var chords = ChordDifference.Between(made.Arrangement, next.Arrangement).Count;
        var written = made.Arrangement.Choices.Count(c => c.Pass == 1);
        var farther = Sentences.Figure(after.Figures!.Carry.Value - before.Figures!.Carry.Value);
        var (from, to) = (tradeOff.Clash(before.Figures), tradeOff.Clash(after.Figures));
        var changes = made.Terms.Concat(next.Terms).Select(t => t.Term).Distinct()
            .Select(term => new PricedTerm(term, In(next, term) - In(made, term)))
            .Where(t => Math.Abs(t.Thousandths) >= Worth)
            .OrderByDescending(t => Math.Abs(t.Thousandths))
            .ToArray();
        string[] paid = [.. changes.Where(t => t.Thousandths > 0).Take(MostTold).Select(Told)];
        string[] spared = [.. changes.Where(t => t.Thousandths < 0).Take(MostTold).Select(Told)];
        return $"{chords} of {written} chords taken otherwise; {farther} dB more carry for {Sentences.Figure(to - from)} more clash ({Percent(to, from)})."
            + (paid.Length == 0 ? "" : $" It pays most for {Sentences.List(paid)}")
            + (spared.Length == 0 ? "" : $"{(paid.Length == 0 ? " It" : " and")} spares {Sentences.List(spared)}")
            + (paid.Length + spared.Length == 0 ? "" : ".");

        static long In(Drafting.Made draft, string term) => draft.Terms.Where(t => t.Term == term).Sum(t => t.Thousandths);
    }

    // Never "-0.0 dB".
    private static string Decibel(double value) => $"{Sentences.Figure(value)} dB";

    private static string Told(PricedTerm term) => $"{term.Term} {Sentences.Price(Math.Abs(term.Thousandths))}";

    private static string Percent(double value, double of) => string.Create(CultureInfo.InvariantCulture, $"{100 * (value - of) / of:0} %");

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A line of the table.</summary>
    private sealed record Row(string Name, Decibels? Asked, ComparedSetting Compared)
    {
        public SettingFigures Figures => Compared.Figures!;

        public Drafting.Made Made => Compared.Made!;
    }
}
