using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>The bars of a score.</summary>
/// <param name="Measures">The bars as written; at least one.</param>
/// <param name="Order">Places among them, in the order as heard.</param>
internal sealed record JoinedMeasures(IReadOnlyList<ReadMeasure> Measures, IReadOnlyList<int> Order);

/// <summary>Makes a lead sheet of the bars that were read.</summary>
internal static class SheetAssembly
{
    private const int LongestTitle = 200;

    /// <summary>The sheet; null where a problem was told.</summary>
    public static LeadSheet? Of(
        string fileName, XElement score, IReadOnlyList<ScorePart> parts, TuneChoice choice, XmlPlaces places, Remarks remarks)
    {
        var joined = Joined(score, parts, choice, places, remarks, tellOthers: true);
        return joined is null ? null : Sheet(fileName, score, joined, remarks);
    }

    /// <summary>The bars of a part and voice, with what other parts say of them, in the order as heard; null where a problem was told.</summary>
    public static JoinedMeasures? Joined(
        XElement score, IReadOnlyList<ScorePart> parts, TuneChoice choice, XmlPlaces places, Remarks remarks, bool tellOthers)
    {
        var measures = PartReader.Read(parts[choice.Part], choice.Voice, places, remarks);
        if (remarks.HasProblems || measures.Count > SheetLimits.MostBars)
        {
            remarks.Refuse(remarks.HasProblems ? [] : [new Problem(places.Of(score), $"{measures.Count} measures", $"at most {SheetLimits.MostBars}")]);
            return null;
        }

        Join(measures, Others(parts, choice, places), tellOthers ? places.Of(score) : null, remarks);
        var order = HeardOrder.Of(measures, remarks);
        if (order.Count > SheetLimits.MostBars)
        {
            remarks.Refuse(measures[^1].Where, "more bars than one sheet may have", $"at most {SheetLimits.MostBars}, repeats unfolded");
        }

        return IsEndless(measures, order, remarks) || remarks.HasProblems ? null : new JoinedMeasures(measures, order);
    }

    /// <summary>The sheet of bars that were joined.</summary>
    public static LeadSheet Sheet(string fileName, XElement score, JoinedMeasures joined, Remarks remarks)
    {
        var measures = joined.Measures;
        var bars = new SheetBars([.. measures.Select((m, i) => ToBar(measures, i))], remarks).Written().ToArray();
        var (tempo, first) = Opening(bars[0]);
        bars[0] = first;
        return new LeadSheet(Title(score, fileName), measures[0].Key?.Named, tempo, bars.ToItems(), RepeatOrder.Played(bars, joined.Order));
    }

    /// <summary>The notes of a bar in order, cut at its end.</summary>
    public static IEnumerable<TuneNote> NotesOf(ReadMeasure measure) => measure.Notes
        .OrderBy(n => n.Start).ThenBy(n => n.Note)
        .Select(n => n.Start + n.Length > measure.Length ? n with { Length = measure.Length - n.Start } : n);

    private static List<IReadOnlyList<ReadMeasure>> Others(IReadOnlyList<ScorePart> parts, TuneChoice choice, XmlPlaces places) =>
        [.. parts.Index().Where(p => p.Index != choice.Part).Select(p => PartReader.Read(p.Item, null, places, new Remarks()))];

    // A bar is as long as its longest part. Symbols stand over any part: those of the tune's own come first.
    private static void Join(IReadOnlyList<ReadMeasure> measures, List<IReadOnlyList<ReadMeasure>> others, Place? tellAt, Remarks remarks)
    {
        foreach (var other in others)
        {
            for (var i = 0; i < Math.Min(measures.Count, other.Count); i++)
            {
                measures[i].Length = other[i].Length > measures[i].Length && other[i].Length.Denominator <= SheetLimits.FinestPart ? other[i].Length : measures[i].Length;
                TakeSigns(measures[i], other[i]);
            }
        }

        if (measures.Any(m => m.Symbols.Any(s => s.Symbol is not null)))
        {
            return;
        }

        if (others.FirstOrDefault(o => o.Any(m => m.Symbols.Any(s => s.Symbol is not null))) is { } chorded)
        {
            remarks.Warn(tellAt is null ? [] : [new Problem(tellAt, "the part that has the tune has no chord symbols; those of another part are taken", "chord symbols over the tune")]);
            for (var i = 0; i < Math.Min(measures.Count, chorded.Count); i++)
            {
                measures[i].Symbols.AddRange(chorded[i].Symbols.Where(s => s.At < measures[i].Length));
            }
        }
    }

    // Some programs write what holds for all parts over one of them alone.
    private static void TakeSigns(ReadMeasure measure, ReadMeasure other)
    {
        var (signs, its) = (measure.Signs, other.Signs);
        signs.Opens |= its.Opens;
        signs.Times = Math.Max(signs.Times, its.Times);
        signs.Ending = signs.Ending.Count > 0 ? signs.Ending : its.Ending;
        signs.EndsEnding |= its.EndsEnding;
        signs.EndsSection |= its.EndsSection;
        signs.IsSegno |= its.IsSegno;
        signs.IsCoda |= its.IsCoda;
        signs.ToCoda |= its.ToCoda;
        signs.IsFine |= its.IsFine;
        signs.DaCapo |= its.DaCapo;
        signs.DalSegno |= its.DalSegno;
        var own = measure.Tempi.Select(t => t.From).ToHashSet();
        measure.Tempi.AddRange(other.Tempi.Where(t => t.From < measure.Length && !own.Contains(t.From)));
    }

    private static ReadBar ToBar(IReadOnlyList<ReadMeasure> measures, int i)
    {
        var (measure, signs) = (measures[i], measures[i].Signs);
        var isLast = i + 1 == measures.Count;
        var bar = new ReadBar
        {
            Meter = measure.Meter,
            Key = i > 0 && measure.Key is { } key ? KeyAlterations.Of(key.Named, key.Fifths) : null,
            Length = measure.Length,
            Where = measure.Where,
            Opening = signs.Opens ? new ReadBarLine(measure.Where, 0, 1, IsDouble: false) : null,
            Ending = signs.Ending,
            EndingPlace = measure.Where,
            Closes = signs.Times > 0 ? 1 : 0,
            EndsSection = isLast || signs.EndsSection || signs.Times > 0 || signs.IsFine || signs.DaCapo || signs.DalSegno || measures[i + 1].Signs.Opens,
            IsParted = measure.IsImplicit && i > 0,
        };
        bar.Notes.AddRange(NotesOf(measure));
        bar.Symbols.AddRange(measure.Symbols.OrderBy(s => s.At).GroupBy(s => s.At).Select(g => g.Last()).Select(s => new PlacedSymbol(s.At, s.Symbol, s.Where)));
        bar.Tempi.AddRange(measure.Tempi.OrderBy(t => t.From).GroupBy(t => t.From).Select(g => g.Last()));
        bar.Fermatas.AddRange(measure.Fermatas);
        return bar;
    }

    /// <summary>
    /// Whether the bars as heard are too long, or fall on no common grid; that is then told. Asked before any sum over bars is
    /// made: an arrangement file could not hold it, nor could exact arithmetic.
    /// </summary>
    public static bool IsEndless(IReadOnlyList<ReadMeasure> measures, IReadOnlyList<int> order, Remarks remarks)
    {
        var last = measures[^1].Where;
        var length = Beats.Zero;
        foreach (var index in order)
        {
            var start = length;
            length += measures[index].Length;
            if (length.Denominator > SheetLimits.FinestPart || length > SheetLimits.LongestPiece)
            {
                remarks.Refuse(
                    last,
                    length > SheetLimits.LongestPiece ? $"a piece of more than {LengthWords.Quarters(SheetLimits.LongestPiece)}" : "bars that fall on no common grid",
                    length > SheetLimits.LongestPiece ? "a shorter one" : $"places that are {SheetLimits.FinestPart}ths of a quarter or coarser");
                return true;
            }

            if (measures[index].Notes.Any(n => !OnGrid(n.Start, start) || !OnGrid(n.Start, n.Length)))
            {
                remarks.Refuse(measures[index].Where, "notes that fall on no common grid", $"places that are {SheetLimits.FinestPart}ths of a quarter or coarser");
                return true;
            }
        }

        return false;

        static bool OnGrid(Beats a, Beats b) => a.Denominator <= SheetLimits.FinestPart && b.Denominator <= SheetLimits.FinestPart && (a + b).Denominator <= SheetLimits.FinestPart;
    }

    // A speed at the very beginning is the sheet's.
    private static (Tempo? Tempo, WrittenBar First) Opening(WrittenBar first)
    {
        var opening = first.Tempi.Where(t => t.From == Beats.Zero).Select(t => (Tempo?)t.Tempo).LastOrDefault();
        return (opening, first with { Tempi = first.Tempi.Where(t => t.From != Beats.Zero).ToItems() });
    }

    private static string Title(XElement score, string fileName)
    {
        var work = score.Child("work")?.ChildText("work-title");
        var title = new[] { work, score.ChildText("movement-title"), Credit(score) }.FirstOrDefault(t => !string.IsNullOrWhiteSpace(t));
        var plain = string.Join(' ', (title ?? Path.GetFileNameWithoutExtension(fileName)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return plain.Length > LongestTitle ? plain[..LongestTitle] : plain;
    }

    private static string? Credit(XElement score) =>
        score.Children("credit").FirstOrDefault(c => c.ChildText("credit-type") == "title")?.ChildText("credit-words");
}
