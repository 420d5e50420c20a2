using System.Globalization;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>The notes of all voices on a grid, and what it took to bring them there.</summary>
/// <param name="Voices">For each voice its notes, in order of start, then upward; no two of one pitch sound at once.</param>
/// <param name="Joined">How many notes fell together with another of their pitch and are gone.</param>
/// <param name="FarthestEnd">By how much an end moved at most; ends at the beginning of the same pitch are not counted.</param>
internal sealed record Quantised(IReadOnlyList<IReadOnlyList<GridNote>> Voices, int Joined, Seconds FarthestEnd)
{
    /// <summary>Brings the notes to a grid: the nearest place, at least one step later for an end.</summary>
    public static Quantised Of(IReadOnlyList<FileVoice> voices, Grid grid, BarLines bars, TickTimes times)
    {
        var (joined, farthest) = (0, Seconds.Zero);
        var placed = voices.Select(v => (IReadOnlyList<GridNote>)[.. v.Notes.GroupBy(n => n.Pitch).SelectMany(OnePitch).OrderBy(n => n.Start).ThenBy(n => n.Pitch)]).ToArray();
        return new Quantised(placed, joined, farthest);

        // A bell has no damper, but struck again it begins anew.
        IEnumerable<GridNote> OnePitch(IEnumerable<SoundedNote> notes)
        {
            GridNote? before = null;
            foreach (var note in notes.Select(Placed).OrderBy(n => n.Start).ThenBy(n => n.End))
            {
                if (before is not null && before.Start.CompareTo(note.Start) < 0)
                {
                    yield return before.End.CompareTo(note.Start) > 0 ? before with { End = note.Start } : before;
                }

                joined += before?.Start == note.Start ? 1 : 0;
                before = note;
            }

            yield return before!;
        }

        GridNote Placed(SoundedNote note)
        {
            var start = grid.Places[note.On];
            var off = bars.Nearest(note.Off, grid.Steps);
            var moved = times.TickFrom(note.Off) * off.Ticks;
            farthest = moved > farthest ? moved : farthest;
            var end = off.Place.CompareTo(start) > 0 ? off.Place : bars.Next(start, grid.Steps);
            return new GridNote(note.Pitch, start, end, grid.Rolled.Contains(note.On));
        }
    }

    /// <summary>Warns of what is not as the file has it.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes the warnings.</param>
    public void Tell(Grid grid, Place whole, Remarks remarks)
    {
        if (grid.Moved > 0)
        {
            remarks.Warn(
                whole,
                string.Create(CultureInfo.InvariantCulture, $"quantised to {grid.Name}{(grid.Fits ? "" : ", though no grid fits")}: {Notes(grid.Moved, "begins", "begin")} elsewhere, by at most {Milliseconds(grid.Farthest)} ms"),
                "notes that begin on note values");
        }

        if (FarthestEnd > Seconds.Zero)
        {
            remarks.Warn(
                whole,
                string.Create(CultureInfo.InvariantCulture, $"ends of notes are taken to {grid.Name}, by at most {Milliseconds(FarthestEnd)} ms"),
                "notes that end on note values");
        }

        if (grid.Rolls > 0)
        {
            remarks.Warn(
                whole,
                string.Create(CultureInfo.InvariantCulture, $"{grid.Rolls} {(grid.Rolls == 1 ? "roll is" : "rolls are")} gathered where the last stroke falls"),
                "strokes less than 0.1 s apart, that ring on, up or down a chord");
        }

        if (Joined > 0)
        {
            remarks.Warn(
                whole,
                string.Create(CultureInfo.InvariantCulture, $"{Notes(Joined, "falls", "fall")} together with another of the same pitch and {(Joined == 1 ? "is" : "are")} left out"),
                "one note of a pitch at a time in each voice");
        }
    }

    private static string Notes(int count, string one, string more) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? $"note {one}" : $"notes {more}")}");

    private static int Milliseconds(Seconds time) => (int)Math.Min(int.MaxValue, Math.Ceiling(time.Value * 1000));
}
