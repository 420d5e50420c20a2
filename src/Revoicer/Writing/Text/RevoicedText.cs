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
        page.Entry("Moved", Moved(revoiced.Moved.Count, revoiced.After.Choices.Count));
        page.Entry("Voices", Voices(revoiced.Voices));
        page.Entry("Clash", $"the middle one of all chords: {ClashWords.Of(before.MedianClash, before.MedianWithTune)} before, {ClashWords.Of(now.MedianClash, now.MedianWithTune)} now");
        page.Entry("Carry", $"{before.Carry} before, {now.Carry} now");
        page.Entry("Bright", $"around {before.Brightness} before, {now.Brightness} now");
        page.Entry("Playable", Playable(revoiced.Before, revoiced.Now));
        page.Blank();
        page.Paragraph(
            "A clash of 100 is that of C4 E4 G4 (as heard), struck together and listened to for as long; less is smoother. What the "
            + "tune, which is kept, clashes with itself is left out; the figure with it stands in brackets. What each chord costs, and why, stands below "
            + "under 'Chord by chord'."
            + Before(revoiced));
    }

    private static string Moved(int moved, int all) => moved == all
        ? $"all of {Sentences.Count(all, "chord", "chords")}"
        : $"{Sentences.Count(moved, "chord", "chords")} of {all}; the others stand as they were";

    private static string Voices(KeptVoices voices) =>
        $"a bass in {voices.Basses} of {Sentences.Count(voices.LongChords, "chord", "chords")} of 0.8 s and more, a tone between bass and tune in {voices.InnerTones} of the {voices.InnerAsked} that had three voices or more"
        + (voices.Silent == 0 ? "" : $"; nothing is struck any more under {Sentences.Count(voices.Silent, "chord", "chords")}");

    // What was there is judged where it stood, but compared, chord by chord, where the tune lies now.
    private static string Before(Revoiced revoiced)
    {
        var moved = revoiced.After.TuneOctaves is { } octaves and not 0
            ? " The figures of before, and what could not be played, are of the music where it was written; only the bells that "
                + $"are said to have become others are named {Sentences.Count(Math.Abs(octaves), "octave", "octaves")} {(octaves > 0 ? "higher" : "lower")}, as the tune moved."
            : "";
        return moved + (revoiced.Before.MissingBells.Count > 0 ? " Notes that have no bell are in no figure of before." : "");
    }

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

    private static string Playable(AuditReport before, AuditReport now)
    {
        var was = before.IsPlayable ? "before all of it" : $"before not in {Places(before)}";
        return (before.IsPlayable, now.IsPlayable) switch
        {
            (true, true) => "all of it, before and now",
            (_, true) => $"{was}, now all of it",
            _ => $"{was}, now not in {Places(now)}, where the tune itself, which is kept, comes too quick",
        };

        static string Places(AuditReport report) => Sentences.Count(report.Unplayable.Count, "place", "places");
    }

    private static void Bar(Revoiced revoiced, int number, ArrangedBar bar, TextPage page)
    {
        var (before, now) = (ClashWords.Of(revoiced.Before.BarClashes[number].Clash), ClashWords.Of(revoiced.Now.BarClashes[number].Clash));
        var end = bar.Start + bar.Length;
        var chords = revoiced.After.Choices.Where(c => c.Start >= bar.Start && c.Start < end).ToArray();
        var moved = chords.Where(c => c.Former is { IsKept: false }).ToArray();
        var notes = new KeySpelling(revoiced.After.WrittenKey);
        var what = (chords.Length, moved.Length) switch
        {
            (0, _) => "; no chord begins in it",
            (_, 0) => "; nothing moved",
            var (all, some) when all == some => "",
            var (all, some) => $"; {some} of {all} chords moved",
        };
        page.Paragraph($"{Sentences.Capital(new PlaceNames(revoiced.After).Of(bar.Start))}: clash {before} before, {now} now{what}", hanging: Indent);
        foreach (var choice in moved)
        {
            page.Paragraph($"- {PlaceNames.Of(choice.Bar, choice.Pass, choice.Beat)}, {choice.Symbol}: {Change(choice, notes)}", Indent, 2);
        }

        foreach (var (place, when) in Unplayable(revoiced).Where(p => p.Place.Place >= bar.Start && p.Place.Place < end))
        {
            page.Paragraph($"- not playable {when}, {PlaceNames.Of(place.Bar, place.Pass, place.Beat)}: {WhatStood(place, notes)}", Indent, 2);
        }
    }

    private static IEnumerable<(UnplayablePlace Place, string When)> Unplayable(Revoiced revoiced)
    {
        var (before, now) = (revoiced.Before.Unplayable.ToLookup(p => p.Place), revoiced.Now.Unplayable.ToLookup(p => p.Place));
        return revoiced.Before.Unplayable.Select(p => (p, now.Contains(p.Place) ? "before, and the tune there not now either" : "before"))
            .Concat(revoiced.Now.Unplayable.Where(p => !before.Contains(p.Place)).Select(p => (p, "now, the tune itself")))
            .OrderBy(p => p.p.Place);
    }

    private static string Change(Choice choice, KeySpelling notes)
    {
        var former = choice.Former!;
        var from = former.Notes.Count == 0 ? "no bell" : string.Join(' ', former.Notes.Select(n => notes.Of(n, choice.ToneNames)));
        var to = choice.Strokes.Count == 0 ? "no bell" : string.Join(' ', choice.Strokes.Select(s => s.Note).Distinct().Order().Select(n => notes.Of(n, choice.ToneNames)));
        var worst = former.Differences.Where(d => d.Thousandths > 0).Take(2).Select(d => $"{d.Term} {Sentences.Price(d.Thousandths)}").ToArray();
        var why = former switch
        {
            { CostsMore: null } => FormerWords.Obstacle(former.Obstacle, n => notes.Of(n, choice.ToneNames)),
            { CostsMore: < 0 } => "a rule forbids what was there",
            { CostsMore: 0 } => "it costs the same",
            _ => $"{Sentences.Price(former.CostsMore.Value)} cheaper, for {Sentences.List(worst)}",
        };
        return $"{from} became {to}, {choice.Figure} ({why})";
    }

    private static string WhatStood(UnplayablePlace place, KeySpelling notes) => string.Join("; ", place.Broken
        .Select(b => $"{notes.In(b.Sentence)} ({b.Limit})")
        .Concat(place.Missing.Count == 0 ? [] : [$"no bell for {notes.Of(place.Missing)}"]));
}
