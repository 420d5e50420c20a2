using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// One stretch of a chord as written, to be voiced once: where a repeat lets it sound again it has another hearing.
/// </summary>
/// <param name="Index">Its place among the slots, in the order in which they are first heard.</param>
/// <param name="Symbol">The chord.</param>
/// <param name="Bar">The number of the written bar in which it begins.</param>
/// <param name="InBar">Where in the metre's bar it begins (a pickup fills the end of a bar).</param>
/// <param name="Length">How long it lasts.</param>
/// <param name="Duration">The same in seconds.</param>
/// <param name="Beat">The metre's beat.</param>
/// <param name="Meter">The metre.</param>
/// <param name="IsNewChord">Whether the chord before it is another, or there is none, at its first hearing.</param>
/// <param name="IsFirst">Whether it is the first chord of the piece.</param>
/// <param name="IsLast">Whether one of its hearings ends the piece.</param>
/// <param name="IsCadence">Whether it is the last chord of a phrase, or the one before it with its root a fifth above.</param>
/// <param name="Phrase">Index of its phrase.</param>
/// <param name="BeginsPhrase">Whether it is the first chord of its phrase.</param>
/// <param name="Hearings">When it is heard; at least once.</param>
public sealed record Slot(
    int Index,
    ChordSymbol Symbol,
    int Bar,
    Beats InBar,
    Beats Length,
    Seconds Duration,
    Beats Beat,
    Meter Meter,
    bool IsNewChord,
    bool IsFirst,
    bool IsLast,
    bool IsCadence,
    int Phrase,
    bool BeginsPhrase,
    Items<Hearing> Hearings)
{
    /// <summary>
    /// The tune around it, on its clock: one list of strokes for each hearing that differs, in order of time; none where
    /// the sheet has no tune. They reach as far before and after the slot as a limit of playing can.
    /// </summary>
    public Items<Items<NearStroke>> Tunes { get; init; } = [];

    /// <summary>Whether the tune lies under the chords and is their bass.</summary>
    public bool HasTuneBelow { get; init; }

    /// <summary>What the tune strikes within it, alike at every hearing, in order of time.</summary>
    public Items<SlotTuneNote> TuneHere { get; init; } = [];

    /// <summary>What stands there already, where a passage is voiced anew and is to stay close; null otherwise.</summary>
    public OriginalChord? Original { get; init; }

    /// <summary>Bells that the player asks for, each list a whole voicing, lowest first.</summary>
    public Items<Items<WrittenNote>> Asked { get; init; } = [];

    /// <summary>
    /// The bass that follows, the same after every hearing, to which a tone on the last beat may lead by step; null where none may:
    /// that beat is strong or the only one, a phrase ends, or the basses lie no more than a step apart.
    /// </summary>
    public PitchClass? LeadsTo { get; init; }

    /// <summary>The key in which it stands; null where the sheet names none.</summary>
    public KeySignature? Key { get; init; }

    /// <summary>Tones that the chord before has too and that may ring on from there; see <see cref="SharedTones"/>.</summary>
    public PitchClassSet Shared { get; init; }

    /// <summary>
    /// What a voicing leaves to the chord before of the tones shared with it; nothing where the hands strike no tone, or where a tone
    /// is struck twice, in whose place the other could stand.
    /// </summary>
    public PitchClassSet LeftRinging(Voicing voicing) => Shared.Count > 0 && voicing.Upper.Count > 0 && voicing.PitchClasses is var struck && struck.Count == voicing.Bells
        ? Shared.Except(struck)
        : default;

    /// <summary>Tones that the tune strikes by the middle of the slot, or holds into it, at every hearing: they are left to it.</summary>
    public PitchClassSet TuneTones => PitchClassSet.Of(Tunes
        .Select(tune => tune.Where(s => s.After.Value <= (Duration.Value / 2) + 1e-6 && s.Until.Value > 1e-6).Select(s => s.Note.PitchClass))
        .DefaultIfEmpty([])
        .Aggregate((a, b) => a.Intersect(b)));

    /// <summary>Below this a chord is quick: its bass may ring through from the chord before. Common practice.</summary>
    public static readonly Seconds Quick = new(0.8);

    /// <summary>Whether it begins on a strong beat.</summary>
    public bool IsStrong => Meter.IsStrong(InBar);

    /// <summary>Whether it is shorter than <see cref="Quick"/>.</summary>
    public bool IsQuick => Duration < Quick;

    /// <summary>Whether it is quick and another chord follows; the last chord rings on, however it is written.</summary>
    public bool IsPassing => IsQuick && !IsLast;

    /// <summary>
    /// Whether root or slash bass must lie lowest: the first chord, the last, cadences, and wherever the symbol itself names
    /// its bass and is not quick.
    /// </summary>
    public bool WantsRootLowest => IsFirst || IsLast || IsCadence || (Symbol.Bass is not null && !IsQuick);

    /// <summary>Whether a voicing has a bass bell on the root or the slash bass.</summary>
    public bool HasRootLowest(Voicing voicing) => voicing.Bass is not null && voicing.Lowest?.PitchClass == Symbol.Lowest.PitchClass;

    /// <summary>"bar 5 beat 3".</summary>
    public string Place => FormattableString.Invariant($"bar {Bar} beat {BeatNumber:0.##}");

    /// <summary>The beat in the bar, counted from 1.</summary>
    public double BeatNumber => (InBar.Quarters / Beat.Quarters) + 1;
}

/// <summary>A note that is struck within a slot.</summary>
/// <param name="Note">The baton or pedal.</param>
/// <param name="After">How long after the start of the slot.</param>
public readonly record struct SlotTuneNote(WrittenNote Note, Beats After);

/// <summary>A stroke of the tune near a slot.</summary>
/// <param name="Note">The baton or pedal.</param>
/// <param name="Limb">What strikes it.</param>
/// <param name="After">When it is struck, from the start of the slot; negative before it.</param>
/// <param name="Until">When the written note ends, from the start of the slot.</param>
public sealed record NearStroke(WrittenNote Note, Limb Limb, Seconds After, Seconds Until)
{
    /// <summary>Whether a foot plays it.</summary>
    public bool IsPedal => Limb is Limb.LeftFoot or Limb.RightFoot;
}

/// <summary>One time that a slot is heard.</summary>
/// <param name="Order">Its place among all hearings of the piece, from 0.</param>
/// <param name="Pass">1 the first time its bar is heard, 2 the second, ...</param>
/// <param name="Start">Where it begins in the piece as heard.</param>
/// <param name="At">The same in seconds, before any shift for a first roll.</param>
/// <param name="Until">When the slot ends, in seconds.</param>
public sealed record Hearing(int Order, int Pass, Beats Start, Seconds At, Seconds Until)
{
    /// <summary>Whether the chord heard before it is another, or there is none.</summary>
    public bool IsNewChord { get; init; } = true;
}

/// <summary>The slots of a sheet.</summary>
/// <param name="Slots">In the order in which they are first heard; at least one.</param>
/// <param name="Phrases">How many phrases there are.</param>
public sealed record SlotPlan(Items<Slot> Slots, int Phrases)
{
    /// <summary>The tune that is played over them; null where there is none.</summary>
    public PlacedTune? Tune { get; init; }

    /// <summary>All hearings in order of time, each with its slot.</summary>
    public IEnumerable<(Slot Slot, Hearing Hearing)> InTime() =>
        Slots.SelectMany(slot => slot.Hearings, (slot, hearing) => (slot, hearing)).OrderBy(h => h.hearing.Order);
}
