using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Abc;

/// <summary>One voice of a tune as a sheet.</summary>
/// <param name="Sheet">The sheet; null where a problem was told.</param>
/// <param name="Voice">What its voice is called.</param>
/// <param name="OtherVoices">The voices that were passed over, by name.</param>
/// <param name="BarPlaces">For each bar where its first note or rest stands.</param>
internal sealed record AbcSheet(LeadSheet? Sheet, string Voice, IReadOnlyList<string> OtherVoices, IReadOnlyList<Place?> BarPlaces)
{
    /// <summary>The long name of the voice; empty where it has none.</summary>
    public string LongName { get; init; } = "";

    /// <summary>The sheet of one voice.</summary>
    /// <param name="fileName">The file's name.</param>
    /// <param name="file">The file, for what its head says of all tunes.</param>
    /// <param name="tune">The tune.</param>
    /// <param name="voice">What the voice is called; null for the first.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static AbcSheet Of(string fileName, AbcFile file, AbcTune tune, string? voice, Remarks remarks)
    {
        var head = new TuneHead(remarks);
        foreach (var line in file.Head)
        {
            head.TakeForAll(line);
        }

        var headLines = 0;
        while (headLines < tune.Lines.Count && !head.IsComplete)
        {
            head.Take(tune.Lines[headLines++]);
        }

        var last = tune.Lines[^1].Where;
        if (!head.IsComplete)
        {
            remarks.Refuse(last, "the tune ends before its key", "'K:' as the last line of its head, and no empty line inside a tune");
            return new AbcSheet(null, TuneBody.OnlyVoice, [], []);
        }

        var tempo = head.ReadTempo();
        var body = new TuneBody(head, voice, remarks);
        foreach (var line in tune.Lines.Skip(headLines).TakeWhile(_ => !remarks.IsFull && !body.IsFull))
        {
            body.Take(line);
        }

        body.Finish(last);
        var sheet = Assemble(fileName, head, tempo, body, last, remarks);
        return new AbcSheet(sheet, body.Voice, body.OtherVoices, [.. body.Bars.Select(b => b.Where)]) { LongName = body.LongName };
    }

    private static LeadSheet? Assemble(string fileName, TuneHead head, Tempo? tempo, TuneBody body, Place last, Remarks remarks)
    {
        if (body.Bars.Count == 0 && !remarks.HasProblems)
        {
            remarks.Refuse(last, "the tune has no notes", "music behind its 'K:'");
            return null;
        }

        var order = body.IsFull ? [] : PartOrder.Of(body.Bars, head.Parts, remarks);
        if (body.IsFull || order.Count > SheetLimits.MostBars)
        {
            remarks.Refuse(last, "more bars than one sheet may have", $"at most {SheetLimits.MostBars}, repeats unfolded");
        }

        if (remarks.HasProblems)
        {
            return null;
        }

        var bars = new SheetBars(body.Bars, remarks).Written().ToArray();
        (tempo, bars[0]) = Opening(tempo, bars[0]);
        var title = head.Title ?? Path.GetFileNameWithoutExtension(fileName);
        var sheet = new LeadSheet(title, head.Key?.Named, tempo, bars.ToItems(), RepeatOrder.Played(bars, order));
        RefuseEndless(sheet, last, remarks);
        return sheet;
    }

    // A speed at the very beginning is the sheet's.
    private static (Tempo? Tempo, WrittenBar First) Opening(Tempo? tempo, WrittenBar first)
    {
        var opening = first.Tempi.Where(t => t.From == Beats.Zero).Select(t => (Tempo?)t.Tempo).LastOrDefault();
        return (opening ?? tempo, first with { Tempi = first.Tempi.Where(t => t.From != Beats.Zero).ToItems() });
    }

    private static void RefuseEndless(LeadSheet sheet, Place last, Remarks remarks)
    {
        if (sheet.Length > SheetLimits.LongestPiece)
        {
            remarks.Refuse(last, $"a piece of {LengthWords.Quarters(sheet.Length)}", $"at most {LengthWords.Quarters(SheetLimits.LongestPiece)}");
        }
        else if (sheet.Played.Any(p => p.Start.Denominator > SheetLimits.FinestPart) || HeardTune.Of(sheet).Any(n => n.Start.Denominator > SheetLimits.FinestPart || n.Length.Denominator > SheetLimits.FinestPart))
        {
            remarks.Refuse(last, "notes that fall on no common grid", $"places that are {SheetLimits.FinestPart}ths of a quarter or coarser");
        }
    }
}
