using System.Globalization;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Abc;

/// <summary>
/// Reads melody and chord symbols in ABC notation, standard 2.1 (abcnotation.com, December 2011); docs/files.md says what
/// is read, passed over and refused.
/// </summary>
public static class AbcReader
{
    private const int MostCharacters = 1 << 20;


    /// <summary>Reads one voice of one tune.</summary>
    /// <param name="fileName">The file's name as messages give it; without its ending it is the title where there is none.</param>
    /// <param name="text">
    /// The file's text, at most 2^20 characters; of the tune at most 20,000 bars and 100,000 quarters, repeats unfolded.
    /// Lines end with \n, \r\n or \r.
    /// </param>
    /// <param name="choice">Which tune of the file, and which voice.</param>
    /// <returns>
    /// The sheet with warnings, or refused with all problems (the first hundred) in order of place. A tune without chord
    /// symbols is read.
    /// </returns>
    public static Reading<LeadSheet> Read(string fileName, string text, SheetChoice choice)
    {
        if (text.Length > MostCharacters)
        {
            return Reading<LeadSheet>.No(
                Place.WholeFile(fileName),
                string.Create(CultureInfo.InvariantCulture, $"a file of {text.Length} characters"),
                string.Create(CultureInfo.InvariantCulture, $"at most {MostCharacters}"));
        }

        var remarks = new Remarks();
        var file = AbcFile.Read(fileName, text, remarks);
        var sheet = Choose(fileName, file, choice, remarks) is { } tune ? SheetWithChords(fileName, file, tune, choice, remarks) : null;
        return remarks.HasProblems
            ? new Reading<LeadSheet>.Refused(remarks.Problems)
            : new Reading<LeadSheet>.Accepted(sheet!, remarks.Warnings);
    }

    private static AbcTune? Choose(string fileName, AbcFile file, SheetChoice choice, Remarks remarks)
    {
        int[] numbered = [.. file.Tunes.Select(t => t.Number).OfType<int>().Distinct().Take(20)];
        var numbers = numbered.Length > 0 ? string.Join(", ", numbered) : "none has one behind its 'X:'";
        if (file.Tunes.Count == 0)
        {
            remarks.Refuse(Place.WholeFile(fileName), "the file has no tune", "'X:1' at the head of one, then 'T:', 'M:', 'L:', 'K:' and music");
        }
        else if (choice.Piece is { } number)
        {
            var chosen = file.Tunes.FirstOrDefault(t => t.Number == number);
            if (chosen is null)
            {
                remarks.Refuse(Place.WholeFile(fileName), $"the file has no tune {number}", numbered.Length > 0 ? $"one of {numbers}" : "a number behind the 'X:' of every tune");
            }

            return chosen;
        }
        else if (file.Tunes.Count > 1)
        {
            remarks.Warn(file.Tunes[0].Lines[0].Where, $"the file has {file.Tunes.Count} tunes, the first is read", $"the number of another to be chosen: {numbers}");
        }

        return file.Tunes.FirstOrDefault();
    }

    // Where the tune's voice has no chord symbols, those of another voice are taken if its bars are the same.
    private static LeadSheet? SheetWithChords(string fileName, AbcFile file, AbcTune tune, SheetChoice choice, Remarks remarks)
    {
        var (sheet, others) = Sheet(fileName, file, tune, choice, remarks);
        if (sheet is null || sheet.HasChords)
        {
            return sheet;
        }

        foreach (var voice in others)
        {
            var (other, _) = Sheet(fileName, file, tune, choice with { Voice = voice }, new Remarks());
            if (other is { HasChords: true } && sheet.HasBarsOf(other))
            {
                remarks.Warn(tune.Lines[0].Where, $"the voice that has the tune has no chord symbols; those of voice '{Quoted.Text(voice)}' are taken", "chord symbols over the tune");
                return sheet with { Bars = sheet.Bars.Zip(other.Bars, (own, its) => own with { Chords = its.Chords }).ToItems() };
            }
        }

        return sheet;
    }

    private static (LeadSheet? Sheet, IReadOnlyList<string> OtherVoices) Sheet(string fileName, AbcFile file, AbcTune tune, SheetChoice choice, Remarks remarks)
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
            return (null, []);
        }

        var tempo = head.ReadTempo();
        var body = new TuneBody(head, choice.Voice, remarks);
        foreach (var line in tune.Lines.Skip(headLines).TakeWhile(_ => !remarks.IsFull && !body.IsFull))
        {
            body.Take(line);
        }

        body.Finish(last);
        return (Assemble(fileName, head, tempo, body, last, remarks), body.OtherVoices);
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
            remarks.Refuse(last, $"a piece of {Remarks.Quarters(sheet.Length)}", $"at most {Remarks.Quarters(SheetLimits.LongestPiece)}");
        }
        else if (sheet.Played.Any(p => p.Start.Denominator > SheetLimits.FinestPart) || HeardTune.Of(sheet).Any(n => n.Start.Denominator > SheetLimits.FinestPart || n.Length.Denominator > SheetLimits.FinestPart))
        {
            remarks.Refuse(last, "notes that fall on no common grid", $"places that are {SheetLimits.FinestPart}ths of a quarter or coarser");
        }
    }
}
