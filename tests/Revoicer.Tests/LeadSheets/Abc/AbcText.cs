using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.LeadSheets.Abc;

/// <summary>Reads tunes from text, and writes what was read in short.</summary>
internal static class AbcText
{
    /// <summary>A head in 4/4, quarters as unit, C major.</summary>
    public const string Head = "X:1\nT:Kelp\nM:4/4\nL:1/4\nK:C\n";

    public static Reading<LeadSheet> Read(string text, SheetChoice? choice = null) =>
        AbcReader.Read("quay.abc", text, choice ?? SheetChoice.First);

    public static LeadSheet Sheet(string text, SheetChoice? choice = null) => Read(text, choice) switch
    {
        Reading<LeadSheet>.Accepted accepted => accepted.Value,
        Reading<LeadSheet>.Refused refused => throw new InvalidOperationException(string.Concat(refused.Problems)),
        _ => throw new InvalidOperationException("no such reading"),
    };

    public static LeadSheet Music(string music) => Sheet(Head + music);

    public static string Messages(string text, SheetChoice? choice = null) => string.Concat(Read(text, choice) switch
    {
        Reading<LeadSheet>.Refused refused => refused.Problems,
        Reading<LeadSheet>.Accepted accepted => accepted.Warnings,
        _ => [],
    });

    public static bool IsRefused(string text) => Read(text) is Reading<LeadSheet>.Refused;

    /// <summary>
    /// The tune as heard: name, octave and length in quarters; a note that begins later than the one before it ends has
    /// its start, and so has one that begins earlier: "C4 1, E4 1/2, G4 1 at 2".
    /// </summary>
    public static string Heard(LeadSheet sheet)
    {
        var end = Revoicer.Music.Beats.Zero;
        var notes = new List<string>();
        foreach (var note in HeardTune.Of(sheet))
        {
            notes.Add($"{Name(note)} {note.Length}{(note.Start == end ? "" : $" at {note.Start}")}");
            end = note.End;
        }

        return string.Join(", ", notes);
    }

    /// <summary>The tune of some music in 4/4 with quarters as unit.</summary>
    public static string Heard(string music) => Heard(Music(music));

    /// <summary>The bars as heard by their numbers, with the pass from the second on: "1 2 1(2) 2(2)".</summary>
    public static string Order(LeadSheet sheet) =>
        string.Join(' ', sheet.Played.Select(p => sheet.Bars[p.Written].Number + (p.Pass > 1 ? $"({p.Pass})" : "")));

    /// <summary>The bars as written: number, length, and place in the metre where it is not the start: "0:1@3 1:4".</summary>
    public static string Bars(LeadSheet sheet) => string.Join(' ', sheet.Bars.Select(b =>
        $"{b.Number}:{b.Length}{(b.Offset == Revoicer.Music.Beats.Zero ? "" : $"@{b.Offset}")}"));

    /// <summary>Its chords as written, bar by bar: "C 4 | G 2, D 2".</summary>
    public static string Chords(LeadSheet sheet) => string.Join(" | ", sheet.Bars.Select(bar =>
        string.Join(", ", bar.Chords.Select(c => $"{c.Symbol?.ToString() ?? "-"} {c.Length}"))));

    public static void AssertWarnsOf(string found, string text)
    {
        var accepted = Assert.IsType<Reading<LeadSheet>.Accepted>(Read(text));
        Assert.Contains(accepted.Warnings, w => w.Found.Contains(found, StringComparison.Ordinal));
    }

    // The octave of the letter: B sharp 4 sounds as C5.
    private static string Name(HeardNote note) => $"{note.Name}{((note.Note.Midi - note.Name.Alteration) / 12) - 1}";
}
