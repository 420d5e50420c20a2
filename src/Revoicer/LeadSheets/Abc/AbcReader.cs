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
    public static Reading<LeadSheet> Read(string fileName, string text, SheetChoice choice) => Read(
        fileName, text, choice, (file, tune, remarks) => SheetWithChords(fileName, file, tune, choice.Voice, remarks, tellOthers: true)?.Sheet);

    /// <summary>Reads all voices of one tune as music that exists in full.</summary>
    /// <param name="fileName">As for a sheet.</param>
    /// <param name="text">As for a sheet; the tune has at most 64 voices.</param>
    /// <param name="choice">Which tune of the file; all its voices are read, whichever is named here.</param>
    /// <returns>
    /// The passage with warnings; its bars are those of the file's first voice, and its chord symbols those of the first
    /// voice that has any and the same bars. Refused with all problems, as a sheet is, and where a voice has notes outside
    /// those bars.
    /// </returns>
    public static Reading<Passage> Passage(string fileName, string text, SheetChoice choice) =>
        Read(fileName, text, choice, (file, tune, remarks) => AllVoices(fileName, file, tune, remarks));

    private static Reading<T> Read<T>(string fileName, string text, SheetChoice choice, Func<AbcFile, AbcTune, Remarks, T?> read)
        where T : class
    {
        if (text.Length > MostCharacters)
        {
            return Reading<T>.No(
                Place.WholeFile(fileName),
                string.Create(CultureInfo.InvariantCulture, $"a file of {text.Length} characters"),
                string.Create(CultureInfo.InvariantCulture, $"at most {MostCharacters}"));
        }

        var remarks = new Remarks();
        var file = AbcFile.Read(fileName, text, remarks);
        var value = Choose(fileName, file, choice, remarks) is { } tune ? read(file, tune, remarks) : null;
        return remarks.HasProblems || value is null
            ? new Reading<T>.Refused(remarks.Problems)
            : new Reading<T>.Accepted(value, remarks.Warnings);
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
    private static AbcSheet? SheetWithChords(string fileName, AbcFile file, AbcTune tune, string? voice, Remarks remarks, bool tellOthers)
    {
        var read = AbcSheet.Of(fileName, file, tune, voice, remarks);
        if (read.Sheet is not { } sheet || sheet.HasChords)
        {
            return read;
        }

        foreach (var name in read.OtherVoices)
        {
            var other = AbcSheet.Of(fileName, file, tune, name, new Remarks()).Sheet;
            if (other is { HasChords: true } && sheet.HasBarsOf(other))
            {
                remarks.Warn(tellOthers ? [new Problem(tune.Lines[0].Where, $"the voice that has the tune has no chord symbols; those of voice '{Quoted.Text(name)}' are taken", "chord symbols over the tune")] : []);
                return read with { Sheet = sheet with { Bars = sheet.Bars.Zip(other.Bars, (own, its) => own with { Chords = its.Chords }).ToItems() } };
            }
        }

        return read;
    }

    private static Passage? AllVoices(string fileName, AbcFile file, AbcTune tune, Remarks remarks)
    {
        var first = SheetWithChords(fileName, file, tune, null, remarks, tellOthers: false);
        if (first?.Sheet is not { } sheet)
        {
            return null;
        }

        var fitting = new VoiceFitting(sheet, remarks);
        var voices = new List<PassageVoice> { new(first.Voice, sheet.Bars.Select(b => b.Notes).ToItems()) { LongName = first.LongName } };
        foreach (var name in fitting.AtMost(first.OtherVoices, tune.Lines[0].Where))
        {
            var own = new Remarks();
            var read = AbcSheet.Of(fileName, file, tune, name, own);
            remarks.TakeNew(own);
            if (read.Sheet is { } its)
            {
                voices.Add(fitting.Fit(name, [.. its.Bars.Zip(read.BarPlaces, (b, where) => new VoiceBar(b.Length, b.Notes, where ?? tune.Lines[0].Where))]) with { LongName = read.LongName });
            }
        }

        return fitting.Passage(voices);
    }
}
