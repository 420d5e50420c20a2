using Revoicer.Benchmarks;

return args switch
{
    ["drafts", .. var sheets] when sheets.Length > 0 => DraftReport.Print(sheets),
    ["weights", var sheet] => WeightReport.Print(sheet),
    ["program", var program, .. var sheets] when sheets.Length > 0 => ProgramTimes.Print(program, sheets),
    ["tune", .. var sheets] when sheets.Length > 0 => TuneReport.Print(sheets),
    ["pictures", var folder] => PicturesReport.Write(folder),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: Revoicer.Benchmarks drafts SHEET...            what each draft is like, and its stages' times");
    Console.Error.WriteLine("       Revoicer.Benchmarks weights SHEET.abc         what each word of the balanced sound does");
    Console.Error.WriteLine("       Revoicer.Benchmarks program PROGRAM SHEET...   whole runs of the built program, median of ten");
    Console.Error.WriteLine("       Revoicer.Benchmarks tune SHEET...              the tunes of ABC files as heard: start and length in quarters, MIDI number");
    Console.Error.WriteLine("       Revoicer.Benchmarks pictures FOLDER            draws the pictures of docs/clash-model.md into a folder, as SVG and PNG");
    return 2;
}
