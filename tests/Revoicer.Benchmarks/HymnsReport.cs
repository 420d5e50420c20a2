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
    // Beside the sounds as they are, the default one is asked to stay so close.
    private static readonly double[] Closer = [0.25, 0.5, 0.75, 1];

    private static readonly int[] Nearest = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6];

    public static int Print(string folder, int share, string scores)
    {
        string[] files = [.. Directory.GetFiles(folder, "*.abc").Order(StringComparer.Ordinal)];

        // The same tenth every time.
        var random = new Random(1);
        var taken = share == 1 ? files : [.. files.OrderBy(_ => random.Next()).Take((files.Length + share - 1) / share).Order(StringComparer.Ordinal)];
        (string Sound, double StayClose)[] settings = [.. ShippedSounds.Names.Select(n => (n, 0.0)), .. Closer.Select(c => (ShippedSounds.Default.Name, c))];
        var rows = taken.SelectMany(_ => settings, (file, setting) => (file, setting)).ToArray().AsParallel().AsOrdered()
            .Select(t => Of(t.file, t.setting.Sound, t.setting.StayClose, scores)).ToArray();

        Console.WriteLine("| sound | stay close | voiced anew | in another key | chords | kept of those that could be | silent | one stroke | basses struck | steps by step | long chords with a bass | with an inner tone | median clash before | now | strokes before | now | places not playable before | refused |");
        Console.WriteLine("|" + string.Concat(Enumerable.Repeat("---|", 18)));
        foreach (var (sound, close) in settings)
        {
            var of = rows.Where(r => r.Sound == sound && r.StayClose == close).ToArray();
            var made = of.Where(r => r.Refused is null).ToArray();
            var basses = made.Aggregate(default(BassFigures), (sum, r) => sum + r.Basses);
            string[] cells =
            [
                sound,
                $"{close:0.##}",
                $"{made.Length} of {of.Length}",
                $"{made.Count(r => r.Semitones != 0)}",
                $"{made.Sum(r => r.Chords)}",
                Share(made.Sum(r => r.Kept), made.Sum(r => r.Keepable)),
                $"{made.Sum(r => r.Silent)}",
                $"{made.Sum(r => r.Single)}",
                Share(basses.Struck, basses.Changes),
                Share(basses.ByStep, basses.Steps),
                Share(made.Sum(r => r.Voices.Basses), made.Sum(r => r.Voices.LongChords)),
                Share(made.Sum(r => r.Voices.InnerTones), made.Sum(r => r.Voices.InnerAsked)),
                $"{Median(made.Select(r => r.Before)):0.0}",
                $"{Median(made.Select(r => r.Now)):0.0}",
                $"{made.Sum(r => r.StrokesBefore)}",
                $"{made.Sum(r => r.Strokes)}",
                $"{Median(made.Select(r => (double)r.Unplayable)):0}",
                $"{of.Length - made.Length}",
            ];
            Console.WriteLine($"| {string.Join(" | ", cells)} |");
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

    private static Row Of(string path, string soundName, double close, string scores)
    {
        var (file, tower, sound) = (Path.GetFileNameWithoutExtension(path), ShippedTowers.Default, ShippedSounds.Named(soundName));
        if (AbcReader.Passage(path, SheetBytes.Decode(File.ReadAllBytes(path)).Text, SheetChoice.First) is not Reading<Passage>.Accepted { Value: var read })
        {
            return new Row(file, soundName, close, "cannot be read");
        }

        var sentence = "";
        foreach (var semitones in Nearest)
        {
            var revoicing = PassageRevoicing.Of(read.Moved(sheet => sheet.Higher(semitones)), voice: null)!;
            var wish = revoicing.Close(DraftWish.None, close);
            switch (Revoicing.Draft(revoicing.Sheet, tower, sound, wish, null, CancellationToken.None))
            {
                case Drafting.Made { Arrangement: var made }:
                    var name = string.Create(CultureInfo.InvariantCulture, $"{file}-{soundName}-{close}.musicxml");
                    return Row.Of(file, semitones, revoicing.Beside(made, tower, sound, wish), Write(made, Path.Combine(scores, name)), tower);
                case var none:
                    sentence = sentence.Length == 0 ? string.Join("; ", none.Why) : sentence;
                    break;
            }
        }

        return new Row(file, soundName, close, sentence);
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

    private static string Share(int part, int whole) => whole == 0 ? "-" : string.Create(CultureInfo.InvariantCulture, $"{part} of {whole} ({(double)part / whole:0.00})");

    private sealed record Row(string File, string Sound, double StayClose, string? Refused)
    {
        public int Semitones { get; init; }

        public double Before { get; init; }

        public double Now { get; init; }

        public int Unplayable { get; init; }

        public int Chords { get; init; }

        /// <summary>Chords with notes under the tune that could stay: hands and feet take them between the others, and no rule forbids them.</summary>
        public int Keepable { get; init; }

        public int Kept { get; init; }

        public int Silent { get; init; }

        public int Single { get; init; }

        public BassFigures Basses { get; init; }

        public KeptVoices Voices { get; init; } = KeptVoices.None;

        public int StrokesBefore { get; init; }

        public int Strokes { get; init; }

        /// <summary>What is wrong with what was made; null where nothing is.</summary>
        public string? Fault { get; init; }

        public static Row Of(string file, int semitones, Revoiced revoiced, Arrangement made, Tower tower)
        {
            var breaches = new Checker(tower).Check(made.Strokes).Where(b => !b.InTune).ToArray();
            var isReadBack = ArrangementJson.Read("back.json", ArrangementJson.Write(made)) is Reading<Arrangement>.Accepted { Value: var back } && back == made;
            var keepable = made.Choices.Where(c => c.Former is { Notes.Count: > 0, CostsMore: >= 0 }).ToArray();
            return new Row(file, made.Sound, revoiced.StayClose, null)
            {
                Chords = made.Choices.Count,
                Keepable = keepable.Length,
                Kept = keepable.Count(c => c.Former!.IsKept),
                Silent = made.SilentChords,
                Single = made.SingleStrokes,
                Basses = BassFigures.Of(made),
                Voices = revoiced.Voices,
                StrokesBefore = revoiced.Before.Strokes.Count(s => !s.IsTune),
                Strokes = made.Strokes.Count(s => !s.IsTune),
                Semitones = semitones,
                Before = revoiced.Before.Totals.MedianClash,
                Now = revoiced.Now.Totals.MedianClash,
                Unplayable = revoiced.Before.Unplayable.Count,
                Fault = breaches.Length > 0 ? breaches[0].Sentence : isReadBack ? null : "its arrangement is not read back as it was",
            };
        }
    }
}
