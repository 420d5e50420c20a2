using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Writing.Text;

/// <summary>The page that stands before the chords: what the piece needs and what to look at first.</summary>
internal sealed class RationaleFirstPage(Arrangement arrangement)
{
    private const int WorstPlaces = 5;

    private readonly PieceWords _piece = new(arrangement);
    private readonly PlaceNames _places = new(arrangement);
    private readonly RationaleChord _chords = new(arrangement);

    public void WriteTo(TextPage page)
    {
        page.Title(_piece.Title, '=');
        page.Blank();
        page.Entry("Tower", _piece.Tower());
        page.Entry("Sound", Sound());
        page.Entry("Key", _piece.Key());
        if (arrangement.TuneOctaves is { } octaves)
        {
            page.Entry("Tune", Tune(octaves));
        }

        if (arrangement.OtherOctaves.Count > 0)
        {
            page.Entry("Octaves", OctaveWords.Of(arrangement.OtherOctaves));
        }

        if (arrangement.Layout is { } layout)
        {
            page.Entry("Layout", LayoutWords.Of(arrangement, layout));
        }

        page.Entry("Tempo", _piece.Tempo());
        page.Entry("Length", _piece.Length());
        page.Entry("Bells", _piece.Bells(arrangement.Totals.BellsUsed));
        page.Entry("Pedals", _piece.Pedals());
        page.Entry("Heaviest", _piece.Heaviest(arrangement.Totals.HeaviestFrom, arrangement.Totals.HeaviestStrokes));
        if (arrangement.Totals.HeaviestStrokes > 0)
        {
            page.Entry("Fatigue", FatigueText.Of(arrangement.Totals.Fatigue, _places));
        }

        page.Entry("Chords", Chords());
        page.Entry("Clash", Clash());
        if (!arrangement.HasTuneBelow && Against(arrangement.Totals, arrangement.Strokes.Count(s => !s.IsTune)) is { Length: > 0 } against)
        {
            page.Entry("Against", against);
        }

        page.Entry("Bass", Bass());
        page.Entry("Search", $"{arrangement.Status}; price {Sentences.Price(arrangement.Status.Price)}");
        if (arrangement.Wishes.Count > 0)
        {
            List(page, "You wished for, and have:", arrangement.Wishes);
        }

        HowToRead(page);
        Worst(page);
        LeftOut(page);
    }

    private static void List(TextPage page, string heading, IEnumerable<string> entries)
    {
        page.Blank();
        page.Paragraph(heading);
        foreach (var entry in entries)
        {
            page.Paragraph($"- {entry}", indent: 2, hanging: 2);
        }
    }

    private static void HowToRead(TextPage page)
    {
        page.Blank();
        page.Paragraph(
            "A clash of 100 is that of C4 E4 G4 (as heard), struck together and listened to for as long; less is smoother. "
            + "Roughness is the beating of partials that lie close together; contradiction is sounding energy a semitone away "
            + "from a tone of the chord. These figures are over a chord's own time. Prices are in the same unit but over the whole "
            + "ring of its bells, so the two cannot be compared; what two chords share, as roughness between them or voice leading, "
            + "is named at both, so the prices of the chords add up to more than the whole.");
        page.Blank();
        page.Paragraph(
            "Bells are named by the baton or pedal that you read and press. Only where a frequency is given does the strike "
            + "note, which is the pitch heard, stand beside it in brackets.");
        page.Blank();
        page.Paragraph(
            "The MIDI file plays tubular bells. They have no tierce and are damped, so it serves to check notes and rhythm; "
            + "the clashes told of here cannot be heard in it.");
    }

    private string Sound()
    {
        var totals = arrangement.Totals;
        return totals.Brightness.Value <= 0 ? arrangement.Sound : string.Create(
            CultureInfo.InvariantCulture,
            $"{arrangement.Sound}; chords carry {totals.Carry} on the mean (one stroke of C4 as heard = 0), their sound lies around {totals.Brightness}");
    }

    private string Bass() => arrangement.HasTuneBelow ? "the tune; the chords have none of their own" : string.Create(
        CultureInfo.InvariantCulture, $"the bass bell is the root or the slash bass in {100 * arrangement.Totals.RootLowest:0} % of the chords{StrongBeats(arrangement.Totals.StrongBeats)}");

    private static string StrongBeats(StrongBeats beats) => beats switch
    {
        { All: 0 } => "",
        { LongEnough: 0 } => $"; none of the {Sentences.Count(beats.All, "new chord", "new chords")} on strong beats lasts 0.8 s, so none is asked for a bass bell",
        _ => $"; {beats.WithBass} of {Sentences.Count(beats.LongEnough, "new chord", "new chords")} on strong beats that last 0.8 s or more have a bass bell ({beats.All} in all)",
    };

    private string Chords()
    {
        string[] bare =
        [
            .. arrangement.SilentChords is > 0 and var silent ? [silent == 1 ? "1 strikes no bell" : $"{silent} strike no bell"] : Array.Empty<string>(),
            .. arrangement.SingleStrokes is > 0 and var single ? [single == 1 ? "1 has one stroke" : $"{single} have one stroke"] : Array.Empty<string>(),
        ];
        var strokes = Sentences.Count(arrangement.Strokes.Count(s => !s.IsTune), "stroke", "strokes");
        var aside = arrangement.TuneOctaves is null ? "" : " beside the tune";
        return $"{arrangement.Choices.Count} as heard, {strokes}{aside}; {(bare.Length == 0 ? "each has two strokes or more" : Sentences.List(bare))}";
    }

    // A way for which the tower lacks bells has no figure.
    private static string Against(Totals totals, int strokes)
    {
        var ways = new (string Name, double Dose, int Strokes)[]
        {
            ("a plain hand (the root in the lowest octave of the pedals, third and fifth nearest to middle C)", totals.PlainHandDose, totals.PlainHandStrokes),
            ("close root positions", totals.CloseRootDose, totals.CloseRootStrokes),
        }.Where(w => w.Dose > 0);
        var told = string.Join(", ", ways.Select((w, i) => $"{w.Name} {(i == 0 ? "would come " : "")}to {Sentences.Figure(w.Dose)} with {Sentences.Count(w.Strokes, "stroke", "strokes")}"));
        return told.Length == 0 ? "" : $"{told}, in place of {Sentences.Figure(totals.ClashDose)} with {strokes}";
    }

    private string Tune(int octaves) =>
        $"{OctaveNames.Of(octaves)}; with itself it clashes {Sentences.Figure(arrangement.Totals.TuneDose)}, which no voicing changes and which is in no figure below but where it is named{Soft(arrangement.Totals.SoftTune)}";

    private string Soft(SoftTune soft) => soft.Count == 0 ? "" : string.Create(
        CultureInfo.InvariantCulture,
        $"; {Sentences.Count(soft.Count, "of its strokes is", "of its strokes are")} more than 6 dB softer than the bells struck with them, at most {soft.Under.Value:0.0} dB, in {_places.BarOf(soft.At)}");

    private string Clash() =>
        $"{ClashWords.Of(arrangement.Totals.MedianClash, arrangement.MedianWithTune)} for the middle one of all chords (the median); "
        + $"all strokes together come to {Sentences.Figure(arrangement.Totals.ClashDose)}; "
        + $"the price of everything, as the sound weighs it, is {Sentences.Price(arrangement.Totals.Price)}";

    private void Worst(TextPage page)
    {
        // A place heard more than once stands here once, with the time it clashes most.
        var worst = arrangement.Choices
            .OrderByDescending(c => c.Clash.Avoidable)
            .DistinctBy(c => (c.Bar, c.Beat))
            .Take(WorstPlaces)
            .ToArray();
        if (worst.Length == 0)
        {
            return;
        }

        page.Blank();
        page.Paragraph(arrangement.TuneOctaves is null ? "Where it clashes most:" : "Where it clashes most, the tune with itself left out:");
        for (var i = 0; i < worst.Length; i++)
        {
            var quarrel = worst[i].Quarrels.Count > 0 ? $", above all {new QuarrelWords(arrangement, worst[i].ToneNames).InShort(worst[i].Quarrels[0])}" : "";
            page.Paragraph(
                $"{i + 1}. {PlaceNames.Of(worst[i].Bar, worst[i].Pass, worst[i].Beat)}, {_chords.Symbol(worst[i])}: {ClashWords.Of(worst[i].Clash)}{quarrel}",
                indent: 2,
                hanging: 3);
        }
    }

    private void LeftOut(TextPage page)
    {
        string[] unheard = [.. UnheardText.Of(arrangement.Unheard) is { } bars ? [bars] : Array.Empty<string>()];
        if (arrangement.Totals.LeftOut.Count + unheard.Length == 0)
        {
            page.Blank();
            page.Paragraph("Nothing of the sheet was left out or eased.");
            return;
        }

        List(page, "What does not go as written:", unheard.Concat(Counted.Of(arrangement.Totals.LeftOut)).Select(Sentences.Whole));
    }
}
