using FsCheck.Xunit;
using Revoicer.Arrangements;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Tests.Writing;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Midi;
using Xunit;
using static Revoicer.Tests.LeadSheets.Midi.MidiBytes;

namespace Revoicer.Tests.LeadSheets.Midi;

public class MidiLaws
{
    [Law(Arbitrary = [typeof(MidiGens)])]
    public void Music_on_a_grid_comes_through_exactly(ModelMidi model)
    {
        foreach (var format in new[] { 0, 1 })
        {
            var accepted = Accepted(model.File(format));

            // A division that no bar line falls on rounds places; that is no move.
            Assert.Empty(accepted.Warnings);
            Assert.Equal(
                model.Voices.Select(v => v.Select(n => (n.Pitch, n.Start, n.End - n.Start))),
                accepted.Value.Voices.Select(v => accepted.Value.Heard(v).Select(n => (n.Note.Midi, n.Start, n.Length))));
            Assert.Equal(model.Bars.Take(accepted.Value.Sheet.Bars.Count), accepted.Value.Sheet.Bars.Select(b => b.Meter));
            AssertSound(accepted.Value);
        }
    }

    [Law(Arbitrary = [typeof(ArrangementGens)])]
    public void Files_written_here_come_through_exactly(Arrangement arrangement)
    {
        // On a grid of common use; a step lasts more than 1 s, so that nothing is quick enough to be a roll.
        var tempi = TempoMap.Steady(new Tempo(Beats.OfQuarters(1), 4));
        var strokes = arrangement.Strokes.Where(s => (arrangement.Bars.Count % 2 == 0 ? 12 : 8) % s.Beat.Denominator == 0 && s.Note.Midi + arrangement.Tower.Transposition.Semitones is >= 0 and <= 127)
            .Select(s => s with { Lead = Seconds.Zero, At = tempi.At(s.Beat) })
            .DistinctBy(s => (s.Note, s.Beat))
            .ToArray();
        if (strokes.Length == 0)
        {
            return;
        }

        var passage = Accepted(MidiWriting.Bytes(arrangement with { Tempi = tempi, Strokes = strokes.ToItems() })).Value;
        Assert.Equal(
            strokes.Select(s => (s.Beat, s.Note.Midi + arrangement.Tower.Transposition.Semitones)).Order(),
            passage.Voices.SelectMany(v => passage.Heard(v)).Select(n => (n.Start, n.Note.Midi)).Order());
        AssertSound(passage);
    }

    [Law(Arbitrary = [typeof(MidiGens)], MaxTest = 1000)]
    public void Whatever_bytes_are_changed_the_file_is_read_or_refused(ModelMidi model, (uint At, byte What)[] changes)
    {
        var file = model.File(changes.Length % 2);
        foreach (var (at, what) in changes)
        {
            file[at % file.Length] = what;
        }

        AssertOutcome(file);
    }

    [Law(Arbitrary = [typeof(MidiGens)], MaxTest = 100)]
    public void Every_beginning_of_a_file_is_refused(ModelMidi model, uint at)
    {
        var file = model.File(1);
        Assert.IsType<Reading<Passage>.Refused>(Read(file[..(int)(at % file.Length)]));
    }

    [Law(Arbitrary = [typeof(MidiGens)], MaxTest = 200)]
    public void Whatever_bytes_are_put_in_or_taken_out_the_file_is_read_or_refused(ModelMidi model, uint at, byte[] bytes, byte count)
    {
        var file = model.File(0);
        var place = (int)(at % file.Length);
        AssertOutcome([.. file[..place], .. bytes, .. file[place..]]);
        AssertOutcome([.. file[..place], .. file[Math.Min(place + count, file.Length)..]]);
        AssertOutcome(bytes);
        AssertOutcome(File(1, 96, bytes));
    }

    private static void AssertOutcome(byte[] file)
    {
        switch (Read(file))
        {
            case Reading<Passage>.Accepted accepted:
                AssertSound(accepted.Value);
                break;
            case Reading<Passage>.Refused refused:
                Assert.NotEmpty(refused.Problems);
                break;
        }
    }

    // Bars are filled by one stretch without chord; notes lie within their bars, in order, ties lead on.
    private static void AssertSound(Passage passage)
    {
        var sheet = passage.Sheet;
        Assert.NotEmpty(passage.Voices);
        Assert.Equal(passage.Voices.Count, passage.Voices.Select(v => v.Name).Distinct().Count());
        Assert.All(sheet.Bars, bar => Assert.Equal((Beats.Zero, bar.Length), (Assert.Single(bar.Chords).Start, bar.Chords[0].Length)));
        Assert.All(sheet.Bars, bar => Assert.All(bar.Tempi, t => Assert.True(t.From >= Beats.Zero && t.From < bar.Length)));
        Assert.Equal(sheet.Bars.Count, sheet.Played.Count);
        foreach (var voice in passage.Voices)
        {
            Assert.True(voice.HasNotes);
            Assert.Equal(sheet.Bars.Count, voice.Bars.Count);
            Assert.All(voice.Bars.Zip(sheet.Bars), b => Assert.All(b.First, n => Assert.True(n.Length > Beats.Zero && n.Start >= Beats.Zero && n.Start + n.Length <= b.Second.Length)));
            Assert.All(voice.Bars, bar => Assert.Equal(bar.OrderBy(n => n.Start).ThenBy(n => n.Note), bar));
            Assert.All(voice.Bars.SelectMany(b => b), n => Assert.Equal(n.Note.PitchClass, n.Name.PitchClass));
            Assert.Equal(voice.Bars.Sum(b => b.Count) - voice.Bars.Sum(b => b.Count(n => n.IsTiedOn)), passage.Heard(voice).Count);
        }
    }
}
