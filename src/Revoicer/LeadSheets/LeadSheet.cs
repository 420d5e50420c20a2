using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets;

/// <summary>A stretch of a bar under one symbol.</summary>
/// <param name="Start">Where it begins, from the start of its bar.</param>
/// <param name="Length">How long it lasts within this bar; positive.</param>
/// <param name="Symbol">The chord; null for N.C. (no chord) and before the first symbol.</param>
/// <param name="Where">Where the symbol stands in the file.</param>
public sealed record ChordSpan(Beats Start, Beats Length, ChordSymbol? Symbol, Place Where)
{
    /// <summary>Whether no symbol stands here: one written earlier still holds, or none has come yet.</summary>
    public bool IsHeld { get; init; }
}

/// <summary>What is written at a note about a tie that leads to it.</summary>
public enum TieEnd
{
    /// <summary>Nothing, as a tie is written at its first note alone: whatever leads here ends here.</summary>
    Unsaid,

    /// <summary>None ends here.</summary>
    None,

    /// <summary>The tie from the note before it ends here.</summary>
    Paired,

    /// <summary>The tie has this one note: it leads over a repeat, an ending or another jump.</summary>
    OneEnded,
}

/// <summary>A note of the tune as written.</summary>
/// <param name="Start">Where it begins, from the start of its bar.</param>
/// <param name="Length">How long it lasts as written; positive. It may reach over the bar's end only by a tie.</param>
/// <param name="Name">Its spelled name, accidentals of key and bar included.</param>
/// <param name="Note">The key it stands for: sheet pitch is written pitch, middle C = 60.</param>
/// <param name="IsTiedOn">Whether a tie leads to the next note of the same pitch, which is then not struck again.</param>
public sealed record TuneNote(Beats Start, Beats Length, NoteName Name, WrittenNote Note, bool IsTiedOn)
{
    /// <summary>Whether a roll mark stands before it.</summary>
    public bool IsRolled { get; init; }

    /// <summary>What is written about a tie that leads to it.</summary>
    public TieEnd TieEnd { get; init; }
}

/// <summary>A bar as written.</summary>
/// <param name="Number">Its number as a player counts: 1 for the first full bar, 0 for a pickup.</param>
/// <param name="Meter">The metre it stands in.</param>
/// <param name="Length">Its length; shorter than the metre's bar for a pickup.</param>
/// <param name="Chords">The stretches in order; they cover the bar without a gap.</param>
/// <param name="EndsSection">Whether a double bar, a repeat or the end of the piece stands after it.</param>
public sealed record WrittenBar(int Number, Meter Meter, Beats Length, Items<ChordSpan> Chords, bool EndsSection)
{
    /// <summary>
    /// Where the bar begins within its metre: 0, or later for what fills the end of a bar, such as a pickup. A bar that its
    /// metre does not fill counts as such unless it is told otherwise.
    /// </summary>
    public Beats Offset { get; init; } = Meter.Bar - Length;

    /// <summary>The notes of the tune that begin in it, in order of start, then upward; none in a sheet of chords alone.</summary>
    public Items<TuneNote> Notes { get; init; } = [];

    /// <summary>Changes of speed within it, places counted from its start.</summary>
    public Items<TempoChange> Tempi { get; init; } = [];

    /// <summary>The key that holds from its start on, where it changes; null where it stays.</summary>
    public KeySignature? Key { get; init; }

    /// <summary>Places of fermatas, counted from its start.</summary>
    public Items<Beats> Fermatas { get; init; } = [];
}

/// <summary>A bar as heard, repeats unfolded.</summary>
/// <param name="Written">Index into the written bars.</param>
/// <param name="Pass">1 the first time this written bar is heard, 2 the second, ...</param>
/// <param name="Start">Where it begins in the piece as heard.</param>
public sealed record PlayedBar(int Written, int Pass, Beats Start);

/// <summary>A lead sheet: its head, its bars as written, and the order in which they are heard.</summary>
/// <param name="Title">The title; the file's name without ending where the sheet has none.</param>
/// <param name="Key">The written key; null where the sheet names none.</param>
/// <param name="Tempo">The speed; null where the sheet names none.</param>
/// <param name="Bars">The bars as written; at least one.</param>
/// <param name="Played">The bars as heard; at least one.</param>
public sealed record LeadSheet(
    string Title,
    KeySignature? Key,
    Tempo? Tempo,
    Items<WrittenBar> Bars,
    Items<PlayedBar> Played)
{
    /// <summary>The length of the piece as heard.</summary>
    public Beats Length => Played[^1].Start + Bars[Played[^1].Written].Length;

    /// <summary>Whether a bar as heard follows another one than it does as written; not so for the first.</summary>
    /// <param name="played">Index into the bars as heard.</param>
    public bool IsJumpedTo(int played) => played > 0 && Played[played].Written != Played[played - 1].Written + 1;

    /// <summary>Whether a note is heard anywhere.</summary>
    public bool HasTune => Played.Any(p => Bars[p.Written].Notes.Count > 0);

    /// <summary>Whether a chord symbol stands anywhere; N.C. is none.</summary>
    public bool HasChords => Bars.Any(bar => bar.Chords.Any(c => c.Symbol is not null));

    /// <summary>The numbers of written bars that are never heard, each once.</summary>
    public Items<int> Unheard
    {
        get
        {
            var heard = Played.Select(p => p.Written).ToHashSet();
            return Bars.Index().Where(b => !heard.Contains(b.Index)).Select(b => b.Item.Number).Distinct().ToItems();
        }
    }

    /// <summary>Whether another sheet has the same bars, each as long as here, heard in the same order.</summary>
    public bool HasBarsOf(LeadSheet other) =>
        Bars.Select(b => b.Length).SequenceEqual(other.Bars.Select(b => b.Length)) && Played == other.Played;

    /// <summary>The sheet in another key: chords, tune and changes of key moved, the bars as they are.</summary>
    /// <param name="key">The key it is then in; null where the sheet names none.</param>
    /// <param name="fifths">How far names move along the line of fifths.</param>
    /// <param name="semitones">How far the tune moves; notes that would leave MIDI's range move by octaves less.</param>
    public LeadSheet Moved(KeySignature? key, int fifths, int semitones) => this with
    {
        Key = key,
        Bars = Bars.Select(bar => bar with
        {
            Chords = bar.Chords.Select(c => c with { Symbol = c.Symbol?.Moved(fifths) }).ToItems(),
            Notes = bar.Notes.Select(n => n with { Name = n.Name.Moved(fifths), Note = Within(n.Note.Midi + semitones) }).ToItems(),
            Key = bar.Key is { } change ? new KeySignature(change.Tonic.Moved(fifths), change.Mode) : null,
        }).ToItems(),
    };

    /// <summary>The sheet so many semitones higher; where it names no key, as if it stood in C major.</summary>
    public LeadSheet Higher(int semitones)
    {
        var own = Key ?? new KeySignature(new NoteName(Letter.C), Mode.Major);
        var moved = own.Moved(semitones);
        return Moved(Key is null ? null : moved, moved.Fifths - own.Fifths, semitones);
    }

    private static WrittenNote Within(int midi) => WrittenNote.AtMidi(midi < 0 ? midi + 12 : midi > 127 ? midi - 12 : midi);
}
