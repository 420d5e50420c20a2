using System.Globalization;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Midi;
using Revoicer.Text;

namespace Revoicer.Benchmarks;

/// <summary>Prints the voices of MIDI files as heard, so that what another program wrote can be laid beside it.</summary>
internal static class PassageReport
{
    /// <summary>
    /// A line "file NAME" for each file, "bars" with the length of each in quarters, "voice NAME" for each voice, then a line a
    /// note: start and length in quarters, MIDI number. Warnings go to the other output.
    /// </summary>
    public static int Print(IEnumerable<string> files)
    {
        var code = 0;
        foreach (var file in files)
        {
            Console.WriteLine($"file {file}");
            switch (MidiReader.Read(file, File.ReadAllBytes(file)))
            {
                case Reading<Passage>.Accepted accepted:
                    Console.Error.Write(string.Concat(accepted.Warnings));
                    Print(accepted.Value);
                    break;
                case Reading<Passage>.Refused refused:
                    Console.Error.Write(string.Concat(refused.Problems));
                    code = 1;
                    break;
            }
        }

        return code;
    }

    private static void Print(Passage passage)
    {
        Console.WriteLine($"bars {string.Join(' ', passage.Sheet.Bars.Select(b => b.Length))}");
        foreach (var voice in passage.Voices)
        {
            Console.WriteLine($"voice {voice.Name}");
            foreach (var note in passage.Heard(voice))
            {
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{note.Start} {note.Length} {note.Note.Midi}"));
            }
        }
    }
}
