using System.Globalization;
using Revoicer.Audits;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>An audit as plain text: a page about the whole, what cannot be played, where it clashes most, then every bar.</summary>
public static class AuditText
{
    private const int WorstPlaces = 5;
    private const int PlacesNamed = 5;
    private const int Indent = 2;

    /// <summary>
    /// The text: lines of at most 100 characters ending in \n. Bells are named by the notes the player reads; the strike
    /// note stands in brackets where a frequency is given. Figures have one decimal; all digits are in the JSON.
    /// </summary>
    /// <param name="audit">What is told; at least one bar and one tempo.</param>
    public static string Of(AuditReport audit)
    {
        var page = new TextPage();
        FirstPage(audit, page);
        HowToRead(page);
        MissingBells(audit, page);
        Unplayable(audit, page);
        Worst(audit, page);
        if (audit.Told.Count > 0)
        {
            List(page, "To be known:", Counted.Of(audit.Told).Select(Sentences.Whole));
        }

        page.Blank();
        page.Title("Bar by bar", '-');
        int BarOf(Beats place) => Sorted.LastUpTo(audit.Bars, place, b => b.Start);
        var symbols = audit.Chords.ToLookup(c => BarOf(c.Start), c => c.Symbol ?? "no chord");
        var stuck = audit.Unplayable.ToLookup(p => BarOf(p.Place));
        var places = new PlaceNames(audit);
        for (var i = 0; i < audit.Bars.Count; i++)
        {
            var name = Sentences.Capital(places.Of(audit.Bars[i].Start));
            page.Paragraph($"{name}: {Bar(audit.BarClashes[i], [.. symbols[i]], stuck[i].Count())}", hanging: Indent);
        }

        return page.ToString();
    }

    private static void FirstPage(AuditReport audit, TextPage page)
    {
        var piece = new PieceWords(audit);
        var totals = audit.Totals;
        page.Title(piece.Title, '=');
        page.Blank();
        page.Entry("Tower", piece.Tower());
        page.Entry("Sound", Sound(audit));
        page.Entry("Key", piece.Key());
        page.Entry("Tempo", piece.Tempo());
        page.Entry("Length", piece.Length());
        page.Entry("Bells", piece.Bells(totals.BellsUsed));
        page.Entry("Pedals", piece.Pedals());
        page.Entry("Limbs", Limbs(audit));
        page.Entry("Heaviest", piece.Heaviest(totals.HeaviestFrom, totals.HeaviestStrokes));
        if (totals.HeaviestStrokes > 0)
        {
            page.Entry("Fatigue", FatigueText.Of(totals.Fatigue, new PlaceNames(audit)));
        }

        page.Entry("Clash", Clash(audit));
        page.Entry("Playable", audit.IsPlayable ? "yes, all of it" : $"not as it stands: {Sentences.Count(audit.Unplayable.Count, "place", "places")} as heard");
    }

    private static string Sound(AuditReport audit) => audit.Totals.Brightness.Value <= 0 ? audit.Sound : string.Create(
        CultureInfo.InvariantCulture,
        $"{audit.Sound}; chords carry {audit.Totals.Carry} on the mean (one stroke of C4 as heard = 0), their sound lies around {audit.Totals.Brightness}");

    private static string Limbs(AuditReport audit)
    {
        var counts = Enum.GetValues<Limb>()
            .Select(limb => (limb, Strokes: audit.Strokes.Count(s => s.Limb == limb)))
            .Where(c => c.Strokes > 0)
            .Select(c => $"{LimbNames.Of(c.limb)} {Sentences.Count(c.Strokes, "stroke", "strokes")}")
            .ToArray();
        var whence = audit.LimbsAreGiven ? "as the arrangement has them" : "found by the least effort";
        return counts.Length == 0 ? "nothing is struck" : $"{whence}: {Sentences.List(counts)}";
    }

    private static string Clash(AuditReport audit)
    {
        var totals = audit.Totals;
        var of = audit.Chords.Any(c => c.Symbol is not null) ? "chords" : "bars";
        var tune = totals.TuneDose > 0 ? $"; the tune with itself, which is left out but where it is named, to {Sentences.Figure(totals.TuneDose)}" : "";
        return $"{ClashWords.Of(totals.MedianClash, totals.MedianWithTune)} for the middle one of all {of} (the median); all strokes together come to {Sentences.Figure(totals.ClashDose)}{tune}";
    }

    private static void HowToRead(TextPage page)
    {
        page.Blank();
        page.Paragraph(
            "A clash of 100 is that of C4 E4 G4 (as heard), struck together and listened to for as long; less is smoother. "
            + "Roughness is the beating of partials that lie close together; contradiction is sounding energy a semitone away "
            + "from a tone of the chord. Bells are named by the baton or pedal that you read and press.");
    }

    private static void MissingBells(AuditReport audit, TextPage page)
    {
        if (audit.MissingBells.Count == 0)
        {
            return;
        }

        var notes = new KeySpelling(audit.WrittenKey);
        List(page, "Notes without a bell here, which are left out of all figures:", audit.MissingBells.Select(missing =>
        {
            string[] at = [.. audit.Unplayable.Where(p => p.Missing.Contains(missing.Note)).DistinctBy(p => (p.Bar, p.Beat)).Select(PlaceOf)];
            var more = at.Length > PlacesNamed ? $" and {Sentences.Count(at.Length - PlacesNamed, "more place", "more places")}" : "";
            var nearest = missing.Nearest is { } bell ? $"the nearest bell of that name is {notes.Of(bell)}" : "there is no bell of that name at all";
            return $"{notes.Of(missing.Note)}: {string.Join("; ", at.Take(PlacesNamed))}{more}; {nearest}";
        }));
    }

    private static void Unplayable(AuditReport audit, TextPage page)
    {
        // What is heard again stands here once.
        var places = audit.Unplayable.Where(p => p.Broken.Count > 0).DistinctBy(p => (p.Bar, p.Beat, p.Broken)).ToArray();
        if (places.Length > 0)
        {
            var notes = new KeySpelling(audit.WrittenKey);
            List(page, "What cannot be played as it stands (in brackets the limit that is broken):", places.Select(p =>
                $"{Sentences.Capital(PlaceOf(p))}: {string.Join("; ", p.Broken.Select(b => $"{notes.In(b.Sentence)} ({b.Limit})"))}"
                + (p.Remedy is { } remedy ? $". What would do: {notes.In(remedy)}." : ".")));
        }
    }

    private static string PlaceOf(UnplayablePlace place) => PlaceNames.Of(place.Bar, place.Pass, place.Beat);

    private static void Worst(AuditReport audit, TextPage page)
    {
        // A place heard more than once stands here once, with the time it clashes most.
        var worst = audit.Chords
            .Where(c => c.Clash.Avoidable > 0)
            .OrderByDescending(c => c.Clash.Avoidable)
            .DistinctBy(c => (c.Bar, c.Beat))
            .Take(WorstPlaces)
            .ToArray();
        if (worst.Length == 0)
        {
            return;
        }

        page.Blank();
        page.Paragraph("Where it clashes most:");
        for (var i = 0; i < worst.Length; i++)
        {
            var chord = worst[i];
            var symbol = chord.Symbol is { } name ? $", {name}" : "";
            var words = new QuarrelWords(audit, chord.ToneNames);
            page.Paragraph(
                $"{i + 1}. {PlaceNames.Of(chord.Bar, chord.Pass, chord.Beat)}{symbol}: {ClashWords.InParts(chord.Clash)}",
                Indent,
                3);
            foreach (var quarrel in chord.Quarrels)
            {
                page.Paragraph($"- {words.InFull(quarrel)}", Indent + 3, 2);
            }
        }
    }

    private static string Bar(AuditedBar clash, string[] symbols, int stuck) =>
        $"{(symbols.Length == 0 ? "" : $"{string.Join(" | ", symbols)}; ")}{Sentences.Count(clash.Strokes, "stroke", "strokes")}; clash {ClashWords.InParts(clash.Clash)}"
            + (stuck == 0 ? "" : $"; {Sentences.Count(stuck, "place that cannot be played", "places that cannot be played")}");

    private static void List(TextPage page, string heading, IEnumerable<string> entries)
    {
        page.Blank();
        page.Paragraph(heading);
        foreach (var entry in entries)
        {
            page.Paragraph($"- {entry}", Indent, 2);
        }
    }
}
