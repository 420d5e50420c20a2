using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>A tower instrument: its bells, its pedals, and how its strike notes lie to its keys.</summary>
/// <param name="Name">The name in its file.</param>
/// <param name="Bells">The bells, lowest first; at least one; no two on one key.</param>
/// <param name="PedalsFrom">The lowest pedal.</param>
/// <param name="PedalsTo">The highest pedal.</param>
/// <param name="Transposition">From written note to strike note.</param>
/// <param name="Limits">Rows of the playing limits that this tower sets for itself, by key.</param>
public sealed record Tower(
    string Name,
    Items<Bell> Bells,
    WrittenNote PedalsFrom,
    WrittenNote PedalsTo,
    Transposition Transposition,
    Items<LimitOverride> Limits)
{
    /// <summary>The default bell: what stands in where nothing is measured, and what a clash of 100 is taken from.</summary>
    public BellLaw Law { get; init; } = BellLaw.Default;

    /// <summary>Where a tune over the chords is at home.</summary>
    public TuneHome Home { get; init; } = TuneHome.Over(Bells[^1].Note);

    /// <summary>Where a tune under the chords is at home.</summary>
    public TuneHome HomeBelow { get; init; } = TuneHome.Under(PedalsFrom, PedalsTo);

    /// <summary>The tower if default bells sounded otherwise; bells with measured partials stay as they are.</summary>
    public Tower Under(BellLaw law) => this with
    {
        Law = law,
        Bells = Bells.Select(b => b.IsMeasured ? b : law.BellAt(b.Note, b.StrikeNote, b.Strike, LevelOf(b))).ToItems(),
    };

    /// <summary>The bell on a key, or null where the tower has none there.</summary>
    public Bell? At(WrittenNote note) => Bells.FirstOrDefault(b => b.Note == note);

    /// <summary>Whether a foot can play the key: it lies on the pedalboard and has a bell.</summary>
    public bool HasPedal(WrittenNote note) => note >= PedalsFrom && note <= PedalsTo && At(note) is not null;

    /// <summary>The keys without a bell between the lowest and the highest.</summary>
    public IEnumerable<WrittenNote> Missing =>
        Enumerable.Range(Bells[0].Note.Midi, Bells[^1].Note.Midi - Bells[0].Note.Midi + 1)
            .Select(WrittenNote.AtMidi)
            .Where(n => At(n) is null);

    // A default bell of 0 dB has amplitudes whose squares add up to 1.
    private static Decibels LevelOf(Bell bell) => new(10 * Math.Log10(bell.Partials.Sum(p => p.Amplitude * p.Amplitude)));
}

/// <summary>One row of the playing limits as a tower sets it; null leaves that half of the row as shipped.</summary>
/// <param name="Key">The row's key, "hand_span".</param>
/// <param name="Hard">What the program never breaks.</param>
/// <param name="Soft">Where effort begins to cost.</param>
public sealed record LimitOverride(string Key, double? Hard, double? Soft);
