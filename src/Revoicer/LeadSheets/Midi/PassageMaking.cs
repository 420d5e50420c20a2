using System.Globalization;
using Revoicer.Music;
using Revoicer.Smf;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>Makes a passage of what a file says.</summary>
/// <param name="file">The file.</param>
/// <param name="whole">The file as a place.</param>
/// <param name="remarks">Takes problems and warnings.</param>
internal sealed class PassageMaking(SmfFile file, Place whole, Remarks remarks)
{
    // Notes are parted at bar lines; more parts than any piece has would fill the memory.
    private const int MostParts = 300_000;

    /// <summary>The passage; null where a problem was told.</summary>
    public Passage? Make()
    {
        var voices = FileVoice.All(file, whole, remarks);
        if (remarks.HasProblems)
        {
            return null;
        }

        var notes = voices.SelectMany(v => v.Notes).ToArray();
        var metres = file.Tracks.SelectMany(t => t.Metres).OrderBy(m => m.Tick).ToArray();
        if (BarLines.Of(metres, file.Division, notes.Max(n => n.Off), whole, remarks) is not { } bars)
        {
            return null;
        }

        var speeds = file.Tracks.SelectMany(t => t.Speeds).OrderBy(s => s.Tick).ToArray();
        var times = new TickTimes(speeds, file.Division);
        var grid = new GridSearch(notes, bars, times, file.Division).Find();
        var quantised = Quantised.Of(voices, grid, bars, times);
        quantised.Tell(grid, whole, remarks);
        var parts = quantised.Voices.SelectMany(v => v).Sum(n => 1L + LastBar(n) - n.Start.Bar);
        if (parts > MostParts)
        {
            remarks.Refuse(whole, string.Create(CultureInfo.InvariantCulture, $"notes that last over {parts} bars in all"), $"at most {MostParts}");
            return null;
        }

        return Passage(voices, quantised, new FileBars(file.Tracks, speeds, bars, quantised.Voices.SelectMany(v => v).Max(LastBar) + 1, whole, remarks), bars, grid.Steps);
    }

    private Passage Passage(IReadOnlyList<FileVoice> voices, Quantised quantised, FileBars head, BarLines bars, int steps)
    {
        var written = head.Written();
        var likely = NoteNames.Likely(voices.SelectMany(v => v.Notes).Select(n => n.Pitch));
        var names = head.Keys.Select(k => new NoteNames(k?.Fifths ?? likely)).ToArray();
        var title = file.Format == 0 || file.Tracks[0].Edges.Count == 0 ? file.Tracks[0].Name : null;
        var sheet = new LeadSheet(
            title ?? Path.GetFileNameWithoutExtension(whole.Source),
            head.Keys[0],
            head.Opening,
            written,
            RepeatOrder.Played(written, Enumerable.Range(0, written.Count)));
        return new Passage(sheet, voices.Zip(quantised.Voices, (v, notes) => new PassageVoice(v.Name, Bars(notes, written, bars, names, steps))).ToItems());
    }

    private static Items<Items<TuneNote>> Bars(IReadOnlyList<GridNote> notes, Items<WrittenBar> written, BarLines bars, NoteNames[] names, int steps)
    {
        var found = written.Select(_ => new List<TuneNote>()).ToArray();
        foreach (var note in notes)
        {
            for (var bar = note.Start.Bar; bar <= LastBar(note); bar++)
            {
                var from = bar == note.Start.Bar ? Beats.OfQuarters(note.Start.Step, steps) : Beats.Zero;
                var to = bar == note.End.Bar ? Beats.OfQuarters(note.End.Step, steps) : bars.Length(bar);
                found[bar].Add(new TuneNote(from, to - from, names[bar].Of(note.Pitch), WrittenNote.AtMidi(note.Pitch), bar < LastBar(note))
                {
                    IsRolled = note.IsRolled && bar == note.Start.Bar,
                });
            }
        }

        return found.Select(bar => bar.OrderBy(n => n.Start).ThenBy(n => n.Note).ToItems()).ToItems();
    }

    // A note that ends on a bar line does not reach into the bar behind it.
    private static int LastBar(GridNote note) => note.End.Step == 0 ? note.End.Bar - 1 : note.End.Bar;
}
