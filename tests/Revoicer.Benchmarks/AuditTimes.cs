using System.Buffers.Binary;
using System.Diagnostics;
using System.Globalization;
using Revoicer.Audits;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Harmony;
using Revoicer.LeadSheets.Midi;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.Text;

namespace Revoicer.Benchmarks;

/// <summary>
/// Audits MIDI files of so many notes and prints how long each stage takes: chords of four random bells every eighth, each of which
/// ends with the next; and the same notes one after another where none ends before the track does.
/// </summary>
internal static class AuditTimes
{
    private const int Division = 480;
    private const int Step = Division / 2;

    public static int Print(IReadOnlyList<int> counts)
    {
        Console.WriteLine("| notes | ends | read | limbs | chords after that | clash | limits after that | text | all | both cores |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|");
        foreach (var count in counts)
        {
            Row(count, ends: true);
            Row(Math.Min(count, 4_000), ends: false);
        }

        Row(4, "over 19,000 bars", Held());

        return 0;
    }

    private static void Row(int count, bool ends) => Row(count, ends ? "each" : "none", Bytes(count, ends));

    // Four notes that are held for 19,000 bars of 4/4: a file of some 60 bytes.
    private static byte[] Held() => File(
    [
        .. Enumerable.Range(0, 4).SelectMany(i => new byte[] { 0, 0x90, (byte)(60 + (3 * i)), 64 }),
        .. Enumerable.Range(0, 4).SelectMany(i => (byte[])[.. Delta(i == 0 ? 19_000 * 4 * Division : 0), 0x80, (byte)(60 + (3 * i)), 64]),
    ]);

    private static void Row(int count, string ends, byte[] bytes)
    {
        var (watch, worked) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        var stages = new Stages(watch);
        var read = MidiReader.Read("random.mid", bytes);
        var passage = read is Reading<Passage>.Accepted { Value: var value } ? value : throw new InvalidOperationException("the file was refused");
        var finding = Task.Run(() => HarmonyFinding.Of(passage, CancellationToken.None));
        var audit = Auditing.Of(
            passage,
            () =>
            {
                stages.Begin("Chords");
                return finding.GetAwaiter().GetResult().Sheet;
            },
            ShippedTowers.Default,
            ShippedSounds.Default,
            null,
            null,
            stages,
            CancellationToken.None);
        stages.Begin("Text");
        _ = AuditText.Of(audit);
        stages.Begin("");
        var all = watch.Elapsed;
        string[] times = [.. new[] { "Read", "Limbs", "Chords", "Clash", "Limits", "Text" }.Select(s => Seconds(stages.Of(s)))];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {count} | {ends} | {string.Join(" | ", times)} | {Seconds(all)} | {Seconds(Environment.CpuUsage.TotalTime - worked)} |"));
    }

    private static string Seconds(TimeSpan time) => time.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture) + " s";

    // Standard MIDI File 1.0, format 0.
    private static byte[] Bytes(int count, bool ends)
    {
        var random = new Random(1);
        var together = ends ? 4 : 1;
        var track = new List<byte> { 0, 0xFF, 0x58, 4, 4, 2, 24, 8, 0, 0xFF, 0x51, 3, 0x07, 0xA1, 0x20 };
        for (var place = 0; place * together < count; place++)
        {
            int[] chord = [.. Enumerable.Range(48, 37).OrderBy(_ => random.Next()).Take(together)];
            track.AddRange(chord.SelectMany(note => new byte[] { 0, 0x90, (byte)note, 64 }));
            if (ends)
            {
                track.AddRange(chord.SelectMany((note, i) => (byte[])[.. Delta(i == 0 ? Step : 0), 0x80, (byte)note, 64]));
            }
            else
            {
                track.AddRange([.. Delta(Step), 0xB0, 64, 0]);
            }
        }

        return File(track);
    }

    private static byte[] File(IReadOnlyCollection<byte> events)
    {
        byte[] track = [.. events, 0, 0xFF, 0x2F, 0];
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, track.Length);
        return [.. "MThd"u8, 0, 0, 0, 6, 0, 0, 0, 1, Division >> 8, Division & 0xFF, .. "MTrk"u8, .. length, .. track];
    }

    private static byte[] Delta(int ticks)
    {
        var bytes = new Stack<byte>([(byte)(ticks & 0x7F)]);
        while ((ticks >>= 7) > 0)
        {
            bytes.Push((byte)(0x80 | (ticks & 0x7F)));
        }

        return [.. bytes];
    }

    // Times by stage: reading first, then the chords, the audit's own, and the text last.
    private sealed class Stages(Stopwatch watch) : IProgress<AuditStage>
    {
        private readonly Dictionary<string, TimeSpan> _times = [];
        private (string Stage, TimeSpan From) _now = ("Read", TimeSpan.Zero);

        public void Report(AuditStage value) => Begin(value.ToString());

        public void Begin(string stage)
        {
            _times[_now.Stage] = _times.GetValueOrDefault(_now.Stage) + watch.Elapsed - _now.From;
            _now = (stage, watch.Elapsed);
        }

        public TimeSpan Of(string stage) => _times.GetValueOrDefault(stage);
    }
}
