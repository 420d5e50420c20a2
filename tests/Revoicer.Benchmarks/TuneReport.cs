using System.Globalization;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;

namespace Revoicer.Benchmarks;

/// <summary>Prints the tune of ABC files as heard, so that another reader's can be laid beside it.</summary>
internal static class TuneReport
{
    /// <summary>A line "file NAME" for each file, then a line a note: start and length in quarters, MIDI number.</summary>
    public static int Print(IEnumerable<string> files)
    {
        var code = 0;
        foreach (var file in files)
        {
            Console.WriteLine($"file {file}");
            switch (AbcReader.Read(file, SheetBytes.Decode(File.ReadAllBytes(file)).Text, SheetChoice.First))
            {
                case Reading<LeadSheet>.Accepted accepted:
                    foreach (var note in HeardTune.Of(accepted.Value))
                    {
                        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{note.Start} {note.Length} {note.Note.Midi}"));
                    }

                    break;
                case Reading<LeadSheet>.Refused refused:
                    Console.Error.Write(string.Concat(refused.Problems));
                    code = 1;
                    break;
            }
        }

        return code;
    }
}
