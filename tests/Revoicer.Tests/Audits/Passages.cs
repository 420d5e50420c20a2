using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.LeadSheets.MusicXml;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.MusicXml;

namespace Revoicer.Tests.Audits;

/// <summary>Passages made by hand, and drafts written down as passages.</summary>
internal static class Passages
{
    /// <summary>The sheet of a file of the repository.</summary>
    public static LeadSheet Sheet(string file) => Accepted(Path.GetExtension(file) switch
    {
        ".chords" => ChordGridReader.Read(Path.GetFileName(file), File.ReadAllText(file)),
        ".abc" => AbcReader.Read(Path.GetFileName(file), File.ReadAllText(file), SheetChoice.First),
        _ => MusicXmlReader.Read(Path.GetFileName(file), File.ReadAllBytes(file), null),
    });

    /// <summary>Its draft, on the default tower in the default sound.</summary>
    public static Arrangement Draft(LeadSheet sheet, Sound? sound = null) =>
        Revoicing.Draft(sheet, ShippedTowers.Default, sound ?? ShippedSounds.Default, DraftWish.None, null, default) is Drafting.Made made
            ? made.Arrangement
            : throw new InvalidOperationException("no draft");

    /// <summary>A draft written as a score and read back: notes at their places, roll marks, chord symbols, repeats; no limbs and no touch.</summary>
    public static Passage ReadBack(Arrangement made) => MusicXmlReader.Passage("draft.musicxml", MusicXmlWriting.Bytes(made)) switch
    {
        Reading<Passage>.Accepted { Value: var passage } => passage,
        var refused => throw new InvalidOperationException($"{refused}"),
    };

    /// <summary>
    /// One bar of 4/4 at a tempo of quarter notes a minute; each word is a quarter beat of its own: "C3+E4+G4", "~C3+E4" with a
    /// roll mark, "-" for nothing. Half a beat each where there are eight words, and so on.
    /// </summary>
    public static Passage Bar(string words, double tempo = 60, string? chord = "C")
    {
        var places = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var step = Beats.OfQuarters(4, places.Length);
        var notes = places.SelectMany((word, i) => word == "-" ? [] : word.TrimStart('~').Split('+').Select(name =>
            Note(step * i, Playing.Strokes.Note(name)) with { Length = step, IsRolled = word[0] == '~' }));
        var sheet = Accepted(ChordGridReader.Read("bar.chords", $"title: One Bar\nkey: C\ntime: 4/4\ntempo: {tempo}\n| {chord ?? "N.C."} ||\n"));
        return new Passage(sheet, [new PassageVoice("all", [notes.OrderBy(n => n.Start).ThenBy(n => n.Note).ToItems()])]);
    }

    private static TuneNote Note(Beats start, WrittenNote note) =>
        new(start, Beats.OfQuarters(1, 4), NoteName.AtFifths(((((7 * note.Midi) + 1) % 12) + 12) % 12 - 1), note, IsTiedOn: false);

    private static LeadSheet Accepted(Reading<LeadSheet> reading) => reading is Reading<LeadSheet>.Accepted { Value: var sheet }
        ? sheet
        : throw new InvalidOperationException($"{reading}");
}
