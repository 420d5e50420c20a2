using System.Globalization;
using Revoicer.Smf;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>Beginnings of notes with their ends: of one pitch, the first that began is the first to end.</summary>
/// <param name="Notes">The notes in order of beginning.</param>
/// <param name="Unended">How many of them never end; they last to the end of their track.</param>
/// <param name="Unbegun">How many ends belong to no note.</param>
internal sealed record NotePairs(IReadOnlyList<SoundedNote> Notes, int Unended, int Unbegun)
{
    /// <summary>The notes of one channel.</summary>
    /// <param name="edges">Its beginnings and ends in order.</param>
    /// <param name="end">The tick at which its track ends.</param>
    public static NotePairs Of(IEnumerable<NoteEdge> edges, long end)
    {
        var notes = new List<SoundedNote>();
        var open = new Dictionary<int, Queue<int>>();
        var unbegun = 0;
        foreach (var edge in edges)
        {
            if (!open.TryGetValue(edge.Pitch, out var waiting))
            {
                open[edge.Pitch] = waiting = new Queue<int>();
            }

            if (edge.IsOn)
            {
                waiting.Enqueue(notes.Count);
                notes.Add(new SoundedNote(edge.Pitch, edge.Tick, end));
            }
            else if (waiting.TryDequeue(out var begun))
            {
                notes[begun] = notes[begun] with { Off = edge.Tick };
            }
            else
            {
                unbegun++;
            }
        }

        return new NotePairs(notes, open.Values.Sum(w => w.Count), unbegun);
    }

    /// <summary>Warns of what had no partner.</summary>
    /// <param name="where">"in 'Manual', channel 1,".</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes the warnings.</param>
    public void Tell(string where, Place whole, Remarks remarks)
    {
        if (Unended > 0)
        {
            remarks.Warn(
                whole,
                string.Create(CultureInfo.InvariantCulture, $"{where} {Unended} {(Unended == 1 ? "note never ends and lasts" : "notes never end and last")} to the end of the track"),
                "an end for each note");
        }

        if (Unbegun > 0)
        {
            remarks.Warn(
                whole,
                string.Create(CultureInfo.InvariantCulture, $"{where} {Unbegun} {(Unbegun == 1 ? "end belongs" : "ends belong")} to no note and {(Unbegun == 1 ? "is" : "are")} passed over"),
                "an end for each note");
        }
    }
}
