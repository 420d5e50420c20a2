using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>
/// The notes of a passage that lie on top: those with nothing higher struck with them, nor still sounding when they are
/// struck. Where a voice comes upon a note that another still holds, it is the line's, unless the line has it from a voice
/// before that one in the file; of notes alike that are struck together the first voice's counts. Known as the skyline
/// (Uitdenbogerd and Zobel, ACM Multimedia 1999; from memory), here with written lengths left as they are.
/// </summary>
/// <param name="Tune">The line as one voice.</param>
/// <param name="Others">What is left of each voice.</param>
internal sealed record TopLine(PassageVoice Tune, Items<PassageVoice> Others)
{
    /// <summary>The line of a passage; a bar that is heard several times is judged by its first time.</summary>
    public static TopLine Of(Passage passage)
    {
        var top = OnTop(passage.Voices.SelectMany((voice, i) => Struck(passage.Sheet, voice, i))).ToHashSet();
        return new TopLine(
            new PassageVoice("top", Enumerable.Range(0, passage.Sheet.Bars.Count).Select(bar => Line(passage, bar, top)).ToItems()),
            passage.Voices.Select((voice, i) => voice with { Bars = voice.Bars.Select((notes, bar) => Left(notes, bar, i, top)).ToItems() }).ToItems());
    }

    /// <summary>How much of the line is one voice's: notes as written, 0 to 1; 0 where there is no line.</summary>
    public double ShareOf(PassageVoice voice)
    {
        var own = voice.Bars.Select(notes => notes.ToHashSet()).ToArray();
        var (all, its) = (Tune.Bars.Sum(b => b.Count), Tune.Bars.Index().Sum(b => b.Item.Count(own[b.Index].Contains)));
        return all == 0 ? 0 : (double)its / all;
    }

    private static Items<TuneNote> Line(Passage passage, int bar, HashSet<Piece> top) => passage.Voices
        .SelectMany((voice, i) => voice.Bars[bar].Where((_, k) => top.Contains(new Piece(i, bar, k))))
        .OrderBy(n => n.Start).ThenBy(n => n.Note)
        .ToItems();

    private static Items<TuneNote> Left(Items<TuneNote> notes, int bar, int voice, HashSet<Piece> top) =>
        notes.Where((_, k) => !top.Contains(new Piece(voice, bar, k))).ToItems();

    // The strokes of a voice as heard.
    private static List<Stroke> Struck(LeadSheet sheet, PassageVoice voice, int index)
    {
        var struck = new List<Stroke>();
        var ties = new OpenTies<Stroke>(sheet);
        for (var i = 0; i < sheet.Played.Count; i++)
        {
            var played = sheet.Played[i];
            foreach (var (k, note) in voice.Bars[played.Written].Index())
            {
                var start = played.Start + note.Start;
                if (!ties.Into(note, i, out var stroke))
                {
                    struck.Add(stroke = new Stroke(index, note.Note, start));
                }

                stroke.End = start + note.Length;
                stroke.Pieces.Add(new Piece(index, played.Written, k));
                ties.Keep(note, i, stroke);
            }
        }

        return struck;
    }

    // The notes of the line, tied ones with the note that they are tied to. Of what still sounds a heap gives the highest, of
    // notes alike the line's, by its voice; what has ended leaves it when it comes up. What is heard again is what it was the
    // first time.
    private static IEnumerable<Piece> OnTop(IEnumerable<Stroke> struck)
    {
        var known = new Dictionary<Piece, bool>();
        var sounding = new PriorityQueue<Stroke, (int, int)>();
        foreach (var stroke in struck.OrderBy(s => s.Start).ThenByDescending(s => s.Note).ThenBy(s => s.Voice))
        {
            while (sounding.TryPeek(out var ended, out _) && ended.End <= stroke.Start)
            {
                sounding.Dequeue();
            }

            if (!known.TryGetValue(stroke.Pieces[0], out var isTop))
            {
                isTop = !sounding.TryPeek(out var highest, out var order)
                    || highest.Note < stroke.Note
                    || (highest.Note == stroke.Note && highest.Start < stroke.Start && order.Item2 >= stroke.Voice);
            }

            stroke.Pieces.ForEach(piece => known.TryAdd(piece, isTop));
            sounding.Enqueue(stroke, (-stroke.Note.Midi, isTop ? stroke.Voice : int.MaxValue));
        }

        return known.Where(k => k.Value).Select(k => k.Key);
    }

    // A note as written: its voice, its bar, its place among the notes of both.
    private readonly record struct Piece(int Voice, int Bar, int Place);

    // A note as heard, with the notes that it is written with.
    private sealed class Stroke(int voice, WrittenNote note, Beats start)
    {
        public int Voice => voice;

        public WrittenNote Note => note;

        public Beats Start => start;

        public Beats End { get; set; }

        public List<Piece> Pieces { get; } = [];
    }
}
