using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>A passage parted into its tune and the rest.</summary>
/// <param name="Sheet">The bars and chord symbols of the passage with the tune's notes.</param>
/// <param name="Rest">All other notes as heard, repeats unfolded and ties joined, in order of start, then upward.</param>
/// <param name="Voice">How the tune was chosen, in words: "voice 'S', as asked for".</param>
public sealed record PassageTune(LeadSheet Sheet, Items<HeardNote> Rest, string Voice)
{
    // An estimate: a tune's own voice is crossed by another, or rests, now and then.
    private const double MostlyOnTop = 0.8;

    /// <summary>Finds the tune.</summary>
    /// <param name="passage">The passage.</param>
    /// <param name="voice">
    /// The name of the voice that has it, capitals and small letters alike, or its number among the voices from 1; null to
    /// find it: the file's first voice if it has one note at a time and is nearly always on top, else the top line over all
    /// voices (<see cref="TopLine"/>).
    /// </param>
    /// <returns>The parts; null where no voice is so called.</returns>
    public static PassageTune? Of(Passage passage, string? voice)
    {
        if (voice is not null)
        {
            return passage.Voice(voice) is { } named ? OfVoice(passage, named, $"voice '{Quoted.Text(named.Name)}', as asked for") : null;
        }

        var first = passage.Voices[0];
        if (passage.Voices.Count == 1 && IsOneAtATime(passage, first))
        {
            return OfVoice(passage, first, $"voice '{Quoted.Text(first.Name)}', the only one");
        }

        var top = TopLine.Of(passage);
        return IsOneAtATime(passage, first) && top.ShareOf(first) >= MostlyOnTop
            ? OfVoice(passage, first, $"voice '{Quoted.Text(first.Name)}', the first, which is on top")
            : OfTop(passage, top);
    }

    private static bool IsOneAtATime(Passage passage, PassageVoice voice)
    {
        var notes = passage.Heard(voice);
        return notes.Count > 0 && notes.Zip(notes.Skip(1)).All(pair => pair.First.End <= pair.Second.Start);
    }

    private static PassageTune OfVoice(Passage passage, PassageVoice voice, string words) =>
        new(passage.WithTune(voice), InOrder(passage.Voices.Where(v => v != voice).SelectMany(passage.Heard)), words);

    private static PassageTune OfTop(Passage passage, TopLine top) => new(
        passage.WithTune(top.Tune),
        InOrder(top.Others.SelectMany(passage.Heard)),
        passage.Voices.Count == 1 ? $"the top line of voice '{Quoted.Text(passage.Voices[0].Name)}'" : FormattableString.Invariant($"the top line over all {passage.Voices.Count} voices"));

    private static Items<HeardNote> InOrder(IEnumerable<HeardNote> notes) => notes.OrderBy(n => n.Start).ThenBy(n => n.Note).ToItems();
}
