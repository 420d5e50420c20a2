using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>What became of music that was voiced anew, as plain text: a page about the whole, then bar by bar what moved and why.</summary>
public static class RevoicedText
{
    private const int Indent = 2;

    /// <summary>The text: lines of at most 100 characters ending in \n; bells are named by the notes the player reads.</summary>
    public static string Of(Revoiced revoiced)
    {
        var page = new TextPage();
        FirstPage(revoiced, page);
        page.Blank();
        page.Title("Before and after, bar by bar", '-');
        foreach (var (number, bar) in revoiced.After.Bars.Index().Where(b => b.Item.Pass == 1))
        {
            Bar(revoiced, number, bar, page);
        }

        return page.ToString();
    }

    private static void FirstPage(Revoiced revoiced, TextPage page)
    {
        var (before, now) = (revoiced.Before.Totals, revoiced.Now.Totals);
        page.Title($"{revoiced.After.Title}, voiced anew", '=');
        page.Blank();
        page.Entry("Tune", $"kept: {revoiced.Tune}{Octaves(revoiced.After.TuneOctaves ?? 0)}");
        page.Entry("Chords", Chords(revoiced));
        page.Entry("Close", Closeness(revoiced.StayClose));
        page.Entry("Moved", $"{Sentences.Count(revoiced.Moved.Count, "chord", "chords")} of {revoiced.After.Choices.Count}; the others stand as they were");
        page.Entry("Clash", FromTo("the middle one of all chords", before.MedianClash, now.MedianClash));
        page.Entry("Carry", $"{before.Carry} before, {now.Carry} now");
        page.Entry("Bright", $"around {before.Brightness} before, {now.Brightness} now");
        page.Entry("Playable", Playable(revoiced.Before));
        page.Blank();
        page.Paragraph(
            "A clash of 100 is that of C4 E4 G4 (as heard), struck together and listened to for as long; less is smoother. The tune "
            + "with itself, which is kept, is left out for the chords and counted in the bars. What each chord costs, and why, stands below "
            + "under 'Chord by chord'.");
    }

    private static string FromTo(string what, double before, double now) => $"{what}: {Sentences.Figure(before)} before, {Sentences.Figure(now)} now";

    private static string Octaves(int octaves) => octaves switch
    {
        0 => ", where it was",
        _ => $", {Sentences.Count(Math.Abs(octaves), "octave", "octaves")} {(octaves > 0 ? "higher" : "lower")}, and what was under it is weighed as moved with it",
    };

    private static string Chords(Revoiced revoiced)
    {
        var (found, unclear) = (revoiced.Harmony.Found, revoiced.Harmony.Unclear);
        var whence = found == 0 ? "the symbols of the file" : $"{Sentences.Count(found, "stretch", "stretches")} found from the notes";
        string[] places = [.. unclear.Select(u => u.Number == 0 ? "the pickup" : string.Create(CultureInfo.InvariantCulture, $"bar {u.Number}")).Distinct()];
        return unclear.Count == 0 ? whence : $"{whence}; unclear, so that the tune is left alone there: {Sentences.List(places)}";
    }

    private static string Closeness(double closeness) => closeness == 0
        ? "not asked for: what was there stays only where it is the best"
        : string.Create(CultureInfo.InvariantCulture, $"{closeness:0.##} of at most 1");

    private static string Playable(AuditReport before) => before.IsPlayable
        ? "all of it, before and now"
        : $"before not in {Sentences.Count(before.Unplayable.Count, "place", "places")}, now all of it";

    private static void Bar(Revoiced revoiced, int number, ArrangedBar bar, TextPage page)
    {
        var (before, now) = (revoiced.Before.BarClashes[number].Clash, revoiced.Now.BarClashes[number].Clash);
        var end = bar.Start + bar.Length;
        var chords = revoiced.After.Choices.Where(c => c.Start >= bar.Start && c.Start < end).ToArray();
        var moved = chords.Where(c => c.Former is { IsKept: false }).ToArray();
        var notes = new KeySpelling(revoiced.After.WrittenKey);
        var what = (chords.Length, moved.Length) switch
        {
            (0, _) => "",
            (_, 0) => "; nothing moved",
            var (all, some) when all == some => "",
            var (all, some) => $"; {some} of {all} chords moved",
        };
        page.Paragraph($"{Sentences.Capital(new PlaceNames(revoiced.After).Of(bar.Start))}: clash {Sentences.Figure(before)} before, {Sentences.Figure(now)} now{what}", hanging: Indent);
        foreach (var choice in moved)
        {
            page.Paragraph($"- {PlaceNames.Of(choice.Bar, choice.Pass, choice.Beat)}, {choice.Symbol}: {Change(choice, notes)}", Indent, 2);
        }

        foreach (var place in revoiced.Before.Unplayable.Where(p => p.Place >= bar.Start && p.Place < end))
        {
            page.Paragraph($"- not playable before, {PlaceNames.Of(place.Bar, place.Pass, place.Beat)}: {WhatStood(place, notes)}", Indent, 2);
        }
    }

    private static string Change(Choice choice, KeySpelling notes)
    {
        var former = choice.Former!;
        var from = former.Notes.Count == 0 ? "no bell" : string.Join(' ', former.Notes.Select(n => notes.Of(n, choice.ToneNames)));
        var to = choice.Strokes.Count == 0 ? "no bell" : string.Join(' ', choice.Strokes.Select(s => s.Note).Distinct().Order().Select(n => notes.Of(n, choice.ToneNames)));
        var worst = former.Differences.Where(d => d.Thousandths > 0).Take(2).Select(d => $"{d.Term} {Sentences.Price(d.Thousandths)}").ToArray();
        var why = former switch
        {
            { Dearer: null } => FormerWords.Obstacle(former.Obstacle, n => notes.Of(n, choice.ToneNames)),
            { Dearer: < 0 } => "a rule forbids what was there",
            _ => $"{Sentences.Price(former.Dearer.Value)} cheaper, for {Sentences.List(worst)}",
        };
        return $"{from} became {to}, {choice.Figure} ({why})";
    }

    private static string WhatStood(UnplayablePlace place, KeySpelling notes) => string.Join("; ", place.Broken
        .Select(b => $"{b.Sentence} ({b.Limit})")
        .Concat(place.Missing.Count == 0 ? [] : [$"no bell for {notes.Of(place.Missing)}"]));
}
