using System.Globalization;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>One voice of a passage.</summary>
/// <param name="Name">What the file calls it, else its number among the voices; no two of a passage are alike.</param>
/// <param name="Bars">For each bar as written the notes that begin in it, in order of start, then upward.</param>
public sealed record PassageVoice(string Name, Items<Items<TuneNote>> Bars)
{
    /// <summary>The name that the file has for it besides; empty where it has none.</summary>
    public string LongName { get; init; } = "";

    /// <summary>Whether it is written for the feet.</summary>
    public bool IsForFeet { get; init; }

    /// <summary>Whether its name says that it is written for the feet.</summary>
    public bool IsNamedForFeet => $"{Name} {LongName}".Split(NoWord, StringSplitOptions.RemoveEmptyEntries).Any(FeetWords.Contains);

    /// <summary>Whether it has a note anywhere.</summary>
    public bool HasNotes => Bars.Any(bar => bar.Count > 0);

    // Common practice; "Ped." stands under organ and carillon staves.
    private static readonly HashSet<string> FeetWords = new(["feet", "foot", "ped", "pedal", "pedals"], StringComparer.OrdinalIgnoreCase);
    private static readonly char[] NoWord = [' ', '.', ',', '-', '_', '(', ')', '/', ':'];
}

/// <summary>Music that exists in full: the bars and chord symbols of a sheet, and all voices over them.</summary>
/// <param name="Sheet">Head, bars and chord symbols; its bars have no notes.</param>
/// <param name="Voices">The voices, the file's first one first; at least one, and each has as many bars as the sheet.</param>
public sealed record Passage(LeadSheet Sheet, Items<PassageVoice> Voices)
{
    /// <summary>The notes of one voice as heard, repeats unfolded and ties joined, in order of start, then upward.</summary>
    public Items<HeardNote> Heard(PassageVoice voice) =>
        HeardTune.Of(WithTune(voice)).Select(n => n with { IsForFeet = voice.IsForFeet }).ToItems();

    /// <summary>
    /// The voice of a name, capitals and small letters alike, or of a number among the voices from 1; null where there is none.
    /// </summary>
    public PassageVoice? Voice(string asked) =>
        Voices.FirstOrDefault(v => v.Name == asked)
        ?? Voices.FirstOrDefault(v => v.Name.Equals(asked, StringComparison.OrdinalIgnoreCase) || (asked.Length > 0 && v.LongName.Equals(asked, StringComparison.OrdinalIgnoreCase)))
        ?? (int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= Voices.Count ? Voices[number - 1] : null);

    /// <summary>The passage with the voice that is written for the feet known as such.</summary>
    /// <param name="voice">Its name or number; null to go by what the voices are called.</param>
    /// <returns>The passage; null where no voice is so called.</returns>
    public Passage? WithFeet(string? voice)
    {
        var asked = voice is null ? null : Voice(voice);
        return voice is not null && asked is null ? null : this with
        {
            Voices = Voices.Select(v => v with { IsForFeet = asked is null ? v.IsNamedForFeet : v == asked }).ToItems(),
        };
    }

    /// <summary>The passage with its sheet, and each voice over it, moved alike.</summary>
    public Passage Moved(Func<LeadSheet, LeadSheet> move) => new(
        move(Sheet),
        Voices.Select(voice => voice with { Bars = move(WithTune(voice)).Bars.Select(bar => bar.Notes).ToItems() }).ToItems());

    /// <summary>The sheet with one voice as its tune.</summary>
    public LeadSheet WithTune(PassageVoice voice) =>
        Sheet with { Bars = Sheet.Bars.Zip(voice.Bars, (bar, notes) => bar with { Notes = notes }).ToItems() };
}
