using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>One voice of a passage.</summary>
/// <param name="Name">What the file calls it, else its number among the voices; no two of a passage are alike.</param>
/// <param name="Bars">For each bar as written the notes that begin in it, in order of start, then upward.</param>
public sealed record PassageVoice(string Name, Items<Items<TuneNote>> Bars)
{
    /// <summary>Whether it has a note anywhere.</summary>
    public bool HasNotes => Bars.Any(bar => bar.Count > 0);
}

/// <summary>Music that exists in full: the bars and chord symbols of a sheet, and all voices over them.</summary>
/// <param name="Sheet">Head, bars and chord symbols; its bars have no notes.</param>
/// <param name="Voices">The voices, the file's first one first; at least one, and each has as many bars as the sheet.</param>
public sealed record Passage(LeadSheet Sheet, Items<PassageVoice> Voices)
{
    /// <summary>The notes of one voice as heard, repeats unfolded and ties joined, in order of start, then upward.</summary>
    public Items<HeardNote> Heard(PassageVoice voice) => HeardTune.Of(WithTune(voice));

    /// <summary>The passage with its sheet, and each voice over it, moved alike.</summary>
    public Passage Moved(Func<LeadSheet, LeadSheet> move) => new(
        move(Sheet),
        Voices.Select(voice => voice with { Bars = move(WithTune(voice)).Bars.Select(bar => bar.Notes).ToItems() }).ToItems());

    /// <summary>The sheet with one voice as its tune.</summary>
    public LeadSheet WithTune(PassageVoice voice) =>
        Sheet with { Bars = Sheet.Bars.Zip(voice.Bars, (bar, notes) => bar with { Notes = notes }).ToItems() };
}
