using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Audits;

/// <summary>What music that exists is like on a tower: every stroke as it would be played, how it clashes, what cannot be played.</summary>
/// <param name="Title">The title.</param>
/// <param name="Tower">The instrument.</param>
/// <param name="Sound">The name of the sound setting, whose fade, touch and roll step are used.</param>
/// <param name="WrittenKey">The key the player reads; null where none is named.</param>
/// <param name="SoundingKey">The key heard from the tower; null where none is named.</param>
/// <param name="Tempi">The speeds, by place in the piece as heard.</param>
/// <param name="TempoIsAssumed">Whether neither the file nor the player named a tempo.</param>
/// <param name="Bars">The bars as heard, in order.</param>
/// <param name="Shift">How much later than its tempo map the piece runs, so that a roll before the first beat has room.</param>
/// <param name="Strokes">All strokes that have a bell here, in order of time, then of note.</param>
/// <param name="Chords">One for every chord as heard, and every stretch without a symbol in which something is struck.</param>
/// <param name="BarClashes">The clash of each of the bars, in their order.</param>
/// <param name="Unplayable">Where something cannot be played as it stands, in order; none where all of it can.</param>
/// <param name="Totals">Figures of the whole.</param>
public sealed record AuditReport(
    string Title,
    TowerSummary Tower,
    string Sound,
    KeySignature? WrittenKey,
    KeySignature? SoundingKey,
    TempoMap Tempi,
    bool TempoIsAssumed,
    Items<ArrangedBar> Bars,
    Seconds Shift,
    Items<Stroke> Strokes,
    Items<AuditedChord> Chords,
    Items<AuditedBar> BarClashes,
    Items<UnplayablePlace> Unplayable,
    AuditTotals Totals) : IPlayedPiece
{
    /// <summary>Whether the file itself gives the limbs; else they were found by the least effort.</summary>
    public bool LimbsAreGiven { get; init; }

    /// <summary>What was assumed or left out, in sentences.</summary>
    public Items<string> Told { get; init; } = [];

    /// <summary>The notes for which the tower has no bell, upward; they are in no stroke and no figure.</summary>
    public Items<MissingBell> MissingBells { get; init; } = [];

    /// <summary>Whether all of it can be played here.</summary>
    public bool IsPlayable => Unplayable.Count == 0;
}

/// <summary>One chord as heard, or a stretch without a symbol.</summary>
/// <param name="Bar">The written bar's number.</param>
/// <param name="Pass">1 the first time through, 2 the second, ...</param>
/// <param name="Beat">The beat in the bar, counted from 1.</param>
/// <param name="Start">Where it begins in the piece as heard.</param>
/// <param name="Length">How long it lasts.</param>
/// <param name="Symbol">The chord symbol; null where there is none, so that nothing is contradicted.</param>
/// <param name="ToneNames">The tones of the symbol as it spells them; none without one.</param>
/// <param name="Strokes">What is struck in it, a tune told apart not counted, in order of time.</param>
/// <param name="Clash">The clash figure over its time; 100 is C4 E4 G4 struck together over the same time.</param>
/// <param name="Dose">What its strokes add to the clash dose, in clash units.</param>
/// <param name="Quarrels">What makes up most of its clash, worst first.</param>
public sealed record AuditedChord(
    int Bar,
    int Pass,
    double Beat,
    Beats Start,
    Beats Length,
    string? Symbol,
    Items<NoteName> ToneNames,
    Items<Stroke> Strokes,
    ClashSplit Clash,
    double Dose,
    Items<Quarrel> Quarrels);

/// <summary>The clash of one bar as heard, over its own time; 100 is C4 E4 G4 struck together over the same time.</summary>
/// <param name="Clash">Its figure, all but the tune with itself as its own.</param>
/// <param name="Strokes">How many strokes belong to it.</param>
public sealed record AuditedBar(ClashSplit Clash, int Strokes);

/// <summary>A place at which something cannot be played as it stands.</summary>
/// <param name="Bar">The written bar's number.</param>
/// <param name="Pass">1 the first time through, 2 the second, ...</param>
/// <param name="Beat">The beat in the bar, counted from 1.</param>
/// <param name="Place">The place in the piece as heard.</param>
/// <param name="Missing">Notes there for which the tower has no bell, upward.</param>
/// <param name="Broken">Limits that the others break there.</param>
/// <param name="Remedy">What would do for the broken limits, as a clause; null where nothing simple was found or none was looked for.</param>
public sealed record UnplayablePlace(
    int Bar, int Pass, double Beat, Beats Place, Items<WrittenNote> Missing, Items<BrokenLimit> Broken, string? Remedy);

/// <summary>A note without a bell.</summary>
/// <param name="Note">The note.</param>
/// <param name="Nearest">The nearest bell of the same pitch class; null where the tower has none.</param>
public sealed record MissingBell(WrittenNote Note, WrittenNote? Nearest);

/// <summary>A limit that is broken.</summary>
/// <param name="Limit">The row of playing-limits.tsv; "bell" for a pedal that the tower lacks.</param>
/// <param name="Sentence">What cannot be done, as a clause.</param>
public sealed record BrokenLimit(string Limit, string Sentence);

/// <summary>Figures of the whole.</summary>
/// <param name="ClashDose">The clash dose of all that is struck, in clash units; a tune that is told apart with itself left out.</param>
/// <param name="TuneDose">The clash dose of such a tune with itself; 0 where none is told apart.</param>
/// <param name="MedianClash">The median of the clash figure over the chords, over all stretches where there is no symbol; a tune told apart with itself left out.</param>
/// <param name="MedianWithTune">The same with it.</param>
/// <param name="Carry">How far the chords carry on the mean, re one stroke of C4 over the same time.</param>
/// <param name="Brightness">Around which frequency the energy of all chords lies; 0 where nothing is struck.</param>
/// <param name="BellsUsed">The bells used, lowest first.</param>
/// <param name="HeaviestFrom">Start of the passage of 10 s with most strokes on heavy bells (written below middle C).</param>
/// <param name="HeaviestStrokes">How many such strokes it has.</param>
/// <param name="Fatigue">How tiring its heavy strokes are.</param>
public sealed record AuditTotals(
    double ClashDose,
    double TuneDose,
    double MedianClash,
    double MedianWithTune,
    Decibels Carry,
    Hertz Brightness,
    Items<WrittenNote> BellsUsed,
    Seconds HeaviestFrom,
    int HeaviestStrokes,
    Fatigue Fatigue);
