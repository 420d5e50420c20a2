using System.Globalization;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>A bar of one voice as read.</summary>
/// <param name="Length">Its own length.</param>
/// <param name="Notes">The notes that begin in it.</param>
/// <param name="Where">Where it stands.</param>
internal sealed record VoiceBar(Beats Length, Items<TuneNote> Notes, Place Where);

/// <summary>
/// Lays further voices over the bars of a sheet, which are those of the first voice. What a voice lacks is filled with
/// rests and told; a note for which those bars have no room is refused, since where it belongs nobody can say.
/// </summary>
/// <param name="sheet">The sheet of the first voice.</param>
/// <param name="remarks">Takes problems and warnings.</param>
internal sealed class VoiceFitting(LeadSheet sheet, Remarks remarks)
{
    // Each voice is read on its own, so a file of very many would take very long. A full orchestra has some 40.
    private const int MostVoices = 64;

    /// <summary>The voices beside the first one, of which there may be 63; more is a problem.</summary>
    public IEnumerable<T> AtMost<T>(IReadOnlyList<T> others, Place where)
    {
        if (others.Count >= MostVoices)
        {
            remarks.Refuse(where, string.Create(CultureInfo.InvariantCulture, $"{others.Count + 1} voices"), string.Create(CultureInfo.InvariantCulture, $"at most {MostVoices}"));
            return [];
        }

        return others;
    }

    /// <summary>The voice in the bars of the sheet.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="bars">Its bars as read; at least one.</param>
    public PassageVoice Fit(string name, IReadOnlyList<VoiceBar> bars)
    {
        for (var i = 0; i < Math.Min(bars.Count, sheet.Bars.Count); i++)
        {
            Compare(name, bars[i], sheet.Bars[i]);
        }

        if (bars.Count < sheet.Bars.Count)
        {
            remarks.Warn(bars[^1].Where, $"voice '{Quoted.Text(name)}' ends before the first voice; rests fill it up", "as many bars in all voices");
        }

        if (bars.Skip(sheet.Bars.Count).FirstOrDefault(b => b.Notes.Count > 0) is { } late)
        {
            remarks.Refuse(late.Where, $"voice '{Quoted.Text(name)}' has notes in a bar that the first voice does not have", "the same bars in all voices");
        }

        return new PassageVoice(name, sheet.Bars.Select((_, i) => i < bars.Count ? bars[i].Notes : []).ToItems());
    }

    /// <summary>The passage of the voices; those without a note go, as long as one is left.</summary>
    public Passage Passage(IReadOnlyList<PassageVoice> voices)
    {
        var sounding = voices.Where(v => v.HasNotes).ToArray();
        return new Passage(
            sheet with { Bars = sheet.Bars.Select(b => b with { Notes = [] }).ToItems() },
            (sounding.Length > 0 ? sounding : voices.Take(1)).ToItems());
    }

    private void Compare(string name, VoiceBar bar, WrittenBar first)
    {
        var found = $"bar {first.Number} of voice '{Quoted.Text(name)}' has {LengthWords.Quarters(bar.Length)}";
        var expected = $"{LengthWords.Quarters(first.Length)}, as in the first voice";
        if (bar.Notes.Any(n => n.Start + n.Length > first.Length))
        {
            remarks.Refuse(bar.Where, found, expected);
        }
        else if (bar.Length != first.Length)
        {
            remarks.Warn(bar.Where, $"{found}; rests fill it up or go", expected);
        }
    }
}
