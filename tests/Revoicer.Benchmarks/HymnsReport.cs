using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Playing;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.MusicXml;

namespace Revoicer.Benchmarks;

/// <summary>
/// Voices music in several voices anew, every file in every sound that ships, and prints what it was and what it became. Each score
/// is written into a folder, to be held against the schema.
/// </summary>
internal static class HymnsReport
{
    private static readonly int[] Nearest = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6];

    public static int Print(string folder, int share, string scores)
    {
        string[] files = [.. Directory.GetFiles(folder, "*.abc").Order(StringComparer.Ordinal)];

        // The same tenth every time.
        var random = new Random(1);
        var taken = share == 1 ? files : [.. files.OrderBy(_ => random.Next()).Take((files.Length + share - 1) / share).Order(StringComparer.Ordinal)];
        var rows = taken.SelectMany(_ => ShippedSounds.Names, (file, sound) => (file, sound)).ToArray().AsParallel().AsOrdered().Select(t => Of(t.file, t.sound, scores)).ToArray();

        Console.WriteLine("| sound | voiced anew | in another key | median clash before | now | places not playable before | refused |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        foreach (var sound in ShippedSounds.Names)
        {
            var of = rows.Where(r => r.Sound == sound).ToArray();
            var made = of.Where(r => r.Refused is null).ToArray();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {sound} | {made.Length} of {of.Length} | {made.Count(r => r.Semitones != 0)} | {Median(made.Select(r => r.Before)):0.0} | {Median(made.Select(r => r.Now)):0.0} | {Median(made.Select(r => (double)r.Unplayable)):0} | {of.Length - made.Length} |"));
        }

        foreach (var row in rows.Where(r => r.Refused is not null))
        {
            Console.WriteLine($"{row.File}, {row.Sound}: {row.Refused}");
        }

        foreach (var row in rows.Where(r => r.Fault is not null))
        {
            Console.WriteLine($"fault: {row.File}, {row.Sound}: {row.Fault}");
        }

        return rows.Any(r => r.Fault is not null) ? 1 : 0;
    }

    private static Row Of(string path, string soundName, string scores)
    {
        var (file, tower, sound) = (Path.GetFileNameWithoutExtension(path), ShippedTowers.Default, ShippedSounds.Named(soundName));
        if (AbcReader.Passage(path, SheetBytes.Decode(File.ReadAllBytes(path)).Text, SheetChoice.First) is not Reading<Passage>.Accepted { Value: var read })
        {
            return new Row(file, soundName, "cannot be read");
        }

        var sentence = "";
        foreach (var semitones in Nearest)
        {
            var revoicing = PassageRevoicing.Of(read.Moved(sheet => sheet.Higher(semitones)), voice: null)!;
            var wish = revoicing.Close(DraftWish.None, 0);
            switch (Revoicing.Draft(revoicing.Sheet, tower, sound, wish, null, CancellationToken.None))
            {
                case Drafting.Made { Arrangement: var made }:
                    return Row.Of(file, semitones, revoicing.Beside(made, tower, sound, wish), Write(made, Path.Combine(scores, $"{file}-{soundName}.musicxml")), tower);
                case var none:
                    sentence = sentence.Length == 0 ? string.Join("; ", none.Why) : sentence;
                    break;
            }
        }

        return new Row(file, soundName, sentence);
    }

    private static Arrangement Write(Arrangement made, string path)
    {
        File.WriteAllBytes(path, MusicXmlWriting.Bytes(made));
        return made;
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : sorted[sorted.Length / 2];
    }

    private sealed record Row(string File, string Sound, string? Refused)
    {
        public int Semitones { get; init; }

        public double Before { get; init; }

        public double Now { get; init; }

        public int Unplayable { get; init; }

        /// <summary>What is wrong with what was made; null where nothing is.</summary>
        public string? Fault { get; init; }

        public static Row Of(string file, int semitones, Revoiced revoiced, Arrangement made, Tower tower)
        {
            var breaches = new Checker(tower).Check(made.Strokes).Where(b => !b.InTune).ToArray();
            var isReadBack = ArrangementJson.Read("back.json", ArrangementJson.Write(made)) is Reading<Arrangement>.Accepted { Value: var back } && back == made;
            return new Row(file, made.Sound, null)
            {
                Semitones = semitones,
                Before = revoiced.Before.Totals.MedianClash,
                Now = revoiced.Now.Totals.MedianClash,
                Unplayable = revoiced.Before.Unplayable.Count,
                Fault = breaches.Length > 0 ? breaches[0].Sentence : isReadBack ? null : "its arrangement is not read back as it was",
            };
        }
    }
}
