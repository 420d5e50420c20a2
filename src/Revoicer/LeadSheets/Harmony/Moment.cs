using Revoicer.Music;

namespace Revoicer.LeadSheets.Harmony;

/// <summary>A stretch of a bar between two places where a chord could begin, and what sounds in it.</summary>
internal sealed class Moment
{
    private const int Thousand = 1000;

    private readonly long[] _times = new long[12];

    /// <summary>The stretch of a bar from one place to another.</summary>
    /// <param name="index">Index of the written bar.</param>
    /// <param name="bar">The bar.</param>
    /// <param name="start">Where it begins, from the start of the bar.</param>
    /// <param name="end">Where it ends, later.</param>
    /// <param name="notes">The notes that sound in it, in any order.</param>
    public Moment(int index, WrittenBar bar, Beats start, Beats end, IReadOnlyCollection<TuneNote> notes)
    {
        (Bar, Start, Length) = (index, start, Share(end - start, bar.Meter.Beat));
        IsOnBeat = MetricGrid.IsOnBeat(bar, start);
        Change = MetricGrid.IsStrong(bar, start) ? ChordPrices.ChangeOnStrong
            : IsOnBeat ? ChordPrices.ChangeOnBeat
            : ChordPrices.ChangeOffBeat;
        foreach (var note in notes)
        {
            var (from, to) = (note.Start > start ? note.Start : start, note.Start + note.Length < end ? note.Start + note.Length : end);
            var time = Share(to - from, bar.Meter.Beat);
            time = (long)(time * Weight(bar, note.Start));
            ref var whole = ref _times[note.Note.PitchClass.Value];
            whole = Math.Min(Length, whole + time);
            Sounding |= 1 << note.Note.PitchClass.Value;
        }

        // What sounds when it begins has the bass, if anything does.
        var atStart = notes.Where(n => n.Start <= start).Select(n => n.Note.Midi).DefaultIfEmpty(int.MaxValue).Min();
        Lowest = atStart < int.MaxValue ? atStart : notes.Select(n => n.Note.Midi).DefaultIfEmpty(int.MaxValue).Min();
        Highest = notes.Select(n => n.Note.Midi).DefaultIfEmpty(0).Max();
        IsTogether = AreTogether(notes);
    }

    /// <summary>Index of its written bar.</summary>
    public int Bar { get; }

    /// <summary>Where it begins, from the start of the bar.</summary>
    public Beats Start { get; }

    /// <summary>Its length in thousandths of a beat.</summary>
    public long Length { get; }

    /// <summary>Whether it begins on a beat.</summary>
    public bool IsOnBeat { get; }

    /// <summary>What another chord costs that begins with it.</summary>
    public long Change { get; }

    /// <summary>For each pitch class how long it sounds, thousandths of a beat; what is struck on a weak beat or between beats counts for less.</summary>
    public ReadOnlySpan<long> Times => _times;

    /// <summary>The pitch classes that sound, bit k for k.</summary>
    public int Sounding { get; }

    /// <summary>The lowest note that sounds when it begins, else in it; above all notes where none does.</summary>
    public int Lowest { get; }

    /// <summary>The highest note that sounds in it; 0 where none does.</summary>
    public int Highest { get; }

    /// <summary>Whether nothing sounds.</summary>
    public bool IsSilent => Sounding == 0;

    /// <summary>Whether two different notes sound together.</summary>
    public bool IsTogether { get; }

    private static double Weight(WrittenBar bar, Beats at) => MetricGrid.IsStrong(bar, at) ? 1
        : MetricGrid.IsOnBeat(bar, at) ? ChordPrices.ForeignOnBeat
        : ChordPrices.ForeignOffBeat;

    private static bool AreTogether(IReadOnlyCollection<TuneNote> notes)
    {
        TuneNote? longest = null;
        foreach (var note in notes.OrderBy(n => n.Start))
        {
            if (longest is not null && note.Start < longest.Start + longest.Length && note.Note != longest.Note)
            {
                return true;
            }

            longest = longest is null || note.Start + note.Length > longest.Start + longest.Length ? note : longest;
        }

        return false;
    }

    private static long Share(Beats length, Beats beat) => length.Numerator * Thousand * beat.Denominator / (length.Denominator * beat.Numerator);
}
