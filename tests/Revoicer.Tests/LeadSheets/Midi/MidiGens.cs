using FsCheck;
using FsCheck.Fluent;
using Revoicer.Music;

namespace Revoicer.Tests.LeadSheets.Midi;

/// <summary>A note of a model, in order of places on its grid.</summary>
public sealed record ModelMidiNote(int Pitch, Beats Start, Beats End);

/// <summary>Music on a grid that begins anew with every bar.</summary>
/// <param name="Division">Ticks of a quarter.</param>
/// <param name="Steps">Steps of the grid in a quarter.</param>
/// <param name="Bars">The metre of each bar.</param>
/// <param name="Voices">The notes of each voice; at least one, none of a pitch while it sounds.</param>
public sealed record ModelMidi(int Division, int Steps, IReadOnlyList<Meter> Bars, IReadOnlyList<IReadOnlyList<ModelMidiNote>> Voices)
{
    /// <summary>The file, format 1, or format 0 with a channel for each voice.</summary>
    public byte[] File(int format)
    {
        var head = Metres().Append(MidiBytes.Name("Kelp")).Append(MidiBytes.Speed(0, Microseconds)).ToArray();
        var voices = Voices.Select((voice, i) => voice.SelectMany(n => MidiBytes.Note(n.Pitch, Tick(n.Start), Tick(n.End), i + 1)).OrderBy(IsOn)).ToArray();
        return format == 0
            ? MidiBytes.File(0, Division, MidiBytes.Track(head.Concat(voices.SelectMany(v => v).OrderBy(IsOn))))
            : MidiBytes.File(1, Division, [MidiBytes.Track(head), .. voices.Select(v => MidiBytes.Track(v))]);
    }

    // A step lasts 0.12 s, so that nothing is quick enough to be a roll.
    private int Microseconds => 120_000 * Steps;

    // Ends before beginnings, as in any file.
    private static bool IsOn((long Tick, byte[] Event) e) => (e.Event[0] & 0xF0) == 0x90;

    private IEnumerable<(long Tick, byte[] Event)> Metres()
    {
        var at = Beats.Zero;
        foreach (var bar in Bars)
        {
            yield return MidiBytes.Metre(Tick(at), bar.Upper, bar.Lower);
            at += bar.Bar;
        }
    }

    private long Tick(Beats place) => (long)Math.Round(place.Quarters * Division);
}

/// <summary>Generators for MIDI files.</summary>
public static class MidiGens
{
    private static readonly Meter[] Meters = [new(2, 4), new(3, 4), new(4, 4), new(6, 8), new(5, 8), new(2, 2), new(7, 16)];

    // Divisions in use, with grids that lie on ticks and some that lie between them.
    private static readonly (int Division, int Steps)[] Grids =
    [
        (480, 1), (480, 2), (480, 3), (480, 4), (480, 6), (480, 8), (480, 12), (480, 5), (480, 7), (960, 16), (960, 24), (96, 4), (96, 6), (24, 3), (32767, 12), (100, 4), (1000, 3), (1024, 6),
    ];

    public static Arbitrary<ModelMidi> Models() =>
        (from grid in Gen.Elements(Grids)
         from bars in Gen.Elements(Meters).NonEmptyListOf()
         let places = Places(bars, grid.Steps)
         from voices in Voice(places).NonEmptyListOf()
         select new ModelMidi(grid.Division, grid.Steps, [.. bars], [Finest(places, grid.Steps), .. voices.Take(8)])).ToArbitrary();

    // A note on each place of the first quarter, so that no coarser grid holds all beginnings.
    private static IReadOnlyList<ModelMidiNote> Finest(Beats[] places, int steps) =>
        [.. Enumerable.Range(0, steps).Select(i => new ModelMidiNote(90, places[i], places[i + 1]))];

    private static Gen<IReadOnlyList<ModelMidiNote>> Voice(Beats[] places) =>
        from notes in Note(places).NonEmptyListOf()
        select (IReadOnlyList<ModelMidiNote>)[.. notes.GroupBy(n => n.Pitch).SelectMany(Apart).OrderBy(n => n.Start).ThenBy(n => n.Pitch)];

    private static Gen<ModelMidiNote> Note(Beats[] places) =>
        from pitch in Gen.Choose(36, 84)
        from start in Gen.Choose(0, places.Length - 2)
        from length in Gen.Choose(1, 12)
        select new ModelMidiNote(pitch, places[start], places[Math.Min(start + length, places.Length - 1)]);

    private static IEnumerable<ModelMidiNote> Apart(IEnumerable<ModelMidiNote> notes)
    {
        var free = Beats.Zero;
        foreach (var note in notes.OrderBy(n => n.Start).Where(n => n.Start >= free))
        {
            // The check is made anew for each note, as the sequence is.
            free = note.End;
            yield return note;
        }
    }

    private static Beats[] Places(IEnumerable<Meter> bars, int steps)
    {
        var places = new List<Beats>();
        var start = Beats.Zero;
        foreach (var bar in bars)
        {
            for (var step = 0; Beats.OfQuarters(step, steps) < bar.Bar; step++)
            {
                places.Add(start + Beats.OfQuarters(step, steps));
            }

            start += bar.Bar;
        }

        return [.. places, start];
    }
}
