using System.Globalization;
using Revoicer.Benchmarks;
using Revoicer.Benchmarks.Sensitivity;

return args switch
{
    ["drafts", .. var sheets] when sheets.Length > 0 => DraftReport.Print(sheets),
    ["facts"] => FactSensitivity.Print(),
    ["voicings", .. var sheets] when sheets.Length > 0 => VoicingSensitivity.Print(sheets),
    ["tables", var sheet] => TableBenchmarks.Print(sheet),
    ["long", .. var sheets] when sheets.Length > 0 => LongReport.Print(sheets),
    ["sheet", var chords, var seed] when Number(chords) > 0 => LongSheet.Print(Number(chords), Number(seed), withTune: false),
    ["sheet", var chords, var seed, "tune"] when Number(chords) > 0 => LongSheet.Print(Number(chords), Number(seed), withTune: true),
    ["once", .. var sheets] when sheets.Length > 0 => OnceReport.Print(sheets),
    ["lengths", .. var sheets] when sheets.Length > 0 => LengthReport.Print(sheets),
    ["hymns", var folder, var share, var scores] when int.TryParse(share, NumberStyles.None, CultureInfo.InvariantCulture, out var one) && one > 0 => HymnsReport.Print(folder, one, scores),
    ["race", .. var sheets] when sheets.Length > 0 => SolverRace.Print(sheets),
    ["weights", var sheet] => WeightReport.Print(sheet),
    ["layouts", .. var sheets] when sheets.Length > 0 => LayoutReport.Print(sheets),
    ["program", var program, .. var sheets] when sheets.Length > 0 => ProgramTimes.Print(program, sheets),
    ["tune", .. var sheets] when sheets.Length > 0 => TuneReport.Print(sheets),
    ["audit", .. var counts] when counts.Length > 0 && counts.All(c => int.TryParse(c, NumberStyles.None, CultureInfo.InvariantCulture, out _)) =>
        AuditTimes.Print([.. counts.Select(c => int.Parse(c, CultureInfo.InvariantCulture))]),
    ["music", .. var files] when files.Length > 0 => MusicReport.Print(files),
    ["passage", .. var files] when files.Length > 0 => PassageReport.Print(files),
    ["pictures", var folder] => PicturesReport.Write(folder),
    _ => Usage(),
};

static int Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

static int Usage()
{
    Console.Error.WriteLine("usage: Revoicer.Benchmarks drafts SHEET...            what each draft is like, and its stages' times");
    Console.Error.WriteLine("       Revoicer.Benchmarks facts                      how often facts of the trade hold under changed default bells");
    Console.Error.WriteLine("       Revoicer.Benchmarks voicings SHEET...          how often the voicing of a chord changes with them");
    Console.Error.WriteLine("       Revoicer.Benchmarks tables SHEET               price tables beside the plain double loop");
    Console.Error.WriteLine("       Revoicer.Benchmarks long SHEET...              the sheets joined to ever longer pieces");
    Console.Error.WriteLine("       Revoicer.Benchmarks lengths SHEET...           the two halves of the search over ever more slots");
    Console.Error.WriteLine("       Revoicer.Benchmarks sheet CHORDS SEED [tune]   writes a long sheet of chance chords, alike for the same seed");
    Console.Error.WriteLine("       Revoicer.Benchmarks once SHEET...              one cold draft of each: stages, price, gap, memory");
    Console.Error.WriteLine("       Revoicer.Benchmarks hymns FOLDER N SCORES      every N-th part of the hymns voiced anew, scores into a folder");
    Console.Error.WriteLine("       Revoicer.Benchmarks race SHEET...              the search beside the constraint solver");
    Console.Error.WriteLine("       Revoicer.Benchmarks weights SHEET.abc         what each word of the balanced sound does");
    Console.Error.WriteLine("       Revoicer.Benchmarks layouts SHEET.abc...       the tune above and below the chords");
    Console.Error.WriteLine("       Revoicer.Benchmarks program PROGRAM SHEET...   whole runs of the built program, median of ten");
    Console.Error.WriteLine("       Revoicer.Benchmarks tune SHEET...              the tunes of ABC files as heard: start and length in quarters, MIDI number");
    Console.Error.WriteLine("       Revoicer.Benchmarks passage FILE.mid...        the voices of MIDI files as heard, each note likewise");
    Console.Error.WriteLine("       Revoicer.Benchmarks music FILE.json...         what arrangements are like bar by bar, as ../shared/tools/music.py prints it");
    Console.Error.WriteLine("       Revoicer.Benchmarks audit N...                 audits of music of N notes, stage by stage");
    Console.Error.WriteLine("       Revoicer.Benchmarks pictures FOLDER            draws the pictures of docs/clash-model.md into a folder, as SVG and PNG");
    return 2;
}
