using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>A finished arrangement: every stroke, and for every chord as heard why it was voiced so.</summary>
/// <param name="Title">The sheet's title.</param>
/// <param name="Tower">The instrument it was made for.</param>
/// <param name="Sound">The name of the sound setting.</param>
/// <param name="WrittenKey">The key the player reads; null where the sheet names none.</param>
/// <param name="SoundingKey">The key heard from the tower; null where the sheet names none.</param>
/// <param name="Tempi">The speeds, by place in the piece as heard.</param>
/// <param name="TempoIsAssumed">Whether neither sheet nor player named a tempo.</param>
/// <param name="Bars">The bars as heard, in order.</param>
/// <param name="Shift">How much later than its tempo map the piece runs, so that a roll before the first beat has room.</param>
/// <param name="Strokes">All strokes in order of time, then of note.</param>
/// <param name="Choices">One for every chord as heard, in order.</param>
/// <param name="Totals">Figures of the whole.</param>
/// <param name="Status">How good the search knows the answer to be.</param>
public sealed record Arrangement(
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
    Items<Choice> Choices,
    Totals Totals,
    SearchStatus Status) : IPlayedPiece
{
    /// <summary>By how many octaves the tune is played higher than written; null where there is none.</summary>
    public int? TuneOctaves { get; init; }

    /// <summary>What the nearest other octaves in which the tune fits would have cost, nearest first, as far as that was looked at; at most <see cref="OtherOctave.MostTold"/>.</summary>
    public Items<OtherOctave> OtherOctaves { get; init; } = [];

    /// <summary>Where the tune lies; null where there is none.</summary>
    public ChosenLayout? Layout { get; init; }

    /// <summary>Whether the tune lies under the chords and is their bass.</summary>
    public bool HasTuneBelow => Layout is { Tune: TuneLayout.Below };

    /// <summary>How many chords, as heard, strike no bell.</summary>
    public int SilentChords => Choices.Count(c => c.Strokes.Count == 0);

    /// <summary>How many chords, as heard, have one stroke alone.</summary>
    public int SingleStrokes => Choices.Count(c => c.Strokes.Count == 1);

    /// <summary>The median over the chords as heard of the clash figure, the tune with itself counted in; 0 without a chord.</summary>
    public double MedianWithTune => Choices.Count == 0 ? 0 : StrokeFigures.Median(Choices.Select(c => c.Clash.Whole));

    /// <summary>What the player wished for and got, in sentences.</summary>
    public Items<string> Wishes { get; init; } = [];

    /// <summary>The numbers of written bars of the sheet that are never heard, each once.</summary>
    public Items<int> Unheard { get; init; } = [];
}

/// <summary>What of the tower an arrangement's reader needs to know.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Bells">How many bells it has.</param>
/// <param name="Lowest">Its lowest key.</param>
/// <param name="Highest">Its highest key.</param>
/// <param name="Missing">Keys without a bell in between.</param>
/// <param name="MeasuredBells">How many of its bells have measured partials.</param>
/// <param name="Transposition">From written note to strike note.</param>
public sealed record TowerSummary(
    string Name,
    int Bells,
    WrittenNote Lowest,
    WrittenNote Highest,
    Items<WrittenNote> Missing,
    int MeasuredBells,
    Transposition Transposition);

/// <summary>One bar as heard.</summary>
/// <param name="Number">The written bar's number; 0 for a pickup.</param>
/// <param name="Pass">1 the first time through, 2 the second, ...</param>
/// <param name="Start">Where it begins in the piece as heard.</param>
/// <param name="Length">How long it lasts.</param>
/// <param name="Meter">The metre it stands in.</param>
public sealed record ArrangedBar(int Number, int Pass, Beats Start, Beats Length, Meter Meter)
{
    /// <summary>Its place among the bars as written, from 0: bars heard again have the same.</summary>
    public int Written { get; init; }

    /// <summary>Where the bar begins within its metre: 0, or later for what fills the end of a bar, such as a pickup.</summary>
    public Beats Offset { get; init; }

    /// <summary>Whether a double bar, a repeat or the end of the piece stands after it.</summary>
    public bool EndsSection { get; init; }

    /// <summary>The written key that holds from its start on, where it changes; null where it stays.</summary>
    public KeySignature? Key { get; init; }

    /// <summary>Places of fermatas, counted from its start.</summary>
    public Items<Beats> Fermatas { get; init; } = [];
}

/// <summary>How one chord, as heard, was voiced, and why.</summary>
/// <param name="Bar">The written bar's number.</param>
/// <param name="Pass">1 the first time through, 2 the second, ...</param>
/// <param name="Beat">The beat in the bar, counted from 1; 2.5 is half-way through the second.</param>
/// <param name="Start">Where the slot begins in the piece as heard.</param>
/// <param name="Length">How long the slot lasts.</param>
/// <param name="Symbol">The chord symbol as in the sheet (in the key played).</param>
/// <param name="SoundingBass">The bass as spelled where it differs from the symbol's own; null otherwise.</param>
/// <param name="Figure">The figure's plain name: "together", "rolled", ...</param>
/// <param name="Strokes">The strokes that belong to it, lowest first.</param>
/// <param name="Clash">The clash figure over the slot and its parts; 100 is C4 E4 G4 struck together over the same time.</param>
/// <param name="Dose">The price of the slot's strokes in clash units: everything that rings, each pair counted at the later stroke.</param>
/// <param name="CloseRootClash">What the close root position, struck together, would have had as own clash.</param>
/// <param name="Quarrels">The two or three pairs of partials that quarrel most, worst first.</param>
/// <param name="RingingOn">Bells struck with earlier chords, the tune aside, that still sound above -20 dB at the change, lowest first.</param>
/// <param name="Alternatives">The cheapest other voicings that every rule admits with the other chords as chosen, cheapest first.</param>
/// <param name="Terms">What the choice costs, term by term, in thousandths of a clash unit, in the order of the price list.</param>
/// <param name="Barred">The voicing that would cost less but breaks a rule; null where there is none.</param>
public sealed record Choice(
    int Bar,
    int Pass,
    double Beat,
    Beats Start,
    Beats Length,
    string Symbol,
    NoteName? SoundingBass,
    string Figure,
    Items<Stroke> Strokes,
    ClashSplit Clash,
    double Dose,
    double CloseRootClash,
    Items<Quarrel> Quarrels,
    Items<WrittenNote> RingingOn,
    Items<Alternative> Alternatives,
    Items<PricedTerm> Terms,
    BarredVoicing? Barred)
{
    /// <summary>What stood in its place, where music that exists was voiced anew; null otherwise.</summary>
    public FormerChord? Former { get; init; }

    /// <summary>How often its slot is heard, at least once; terms and alternatives are over all hearings together.</summary>
    public int Hearings { get; init; } = 1;

    /// <summary>Tones that it does not strike as they ring on from the hands' strokes in the chord before, as the symbol spells them.</summary>
    public Items<NoteName> LeftRinging { get; init; } = [];

    /// <summary>The tones of the symbol as it spells them: its slash bass or root first, then from the root upward.</summary>
    public Items<NoteName> ToneNames { get; init; } = [];
}

/// <summary>A clash figure and what it is made of; 100 is the reference chord over a window of the same length.</summary>
/// <param name="Own">Among the slot's own strokes.</param>
/// <param name="FromBefore">With what rings from the slot before.</param>
/// <param name="Haze">With what rings from older slots.</param>
/// <param name="Roughness">The part of the whole that is roughness.</param>
/// <param name="Contradiction">The part of the whole that is contradiction.</param>
public sealed record ClashSplit(double Own, double FromBefore, double Haze, double Roughness, double Contradiction)
{
    /// <summary>The tune with itself, which no voicing changes.</summary>
    public double Tune { get; init; }

    /// <summary>What a voicing can change.</summary>
    public double Avoidable => Own + FromBefore + Haze;

    /// <summary>The whole figure.</summary>
    public double Whole => Avoidable + Tune;
}

/// <summary>Figures of a whole arrangement.</summary>
/// <param name="Price">The price of everything, in thousandths of a clash unit.</param>
/// <param name="ClashDose">The clash dose of all that is struck, in clash units; the tune with itself left out.</param>
/// <param name="MedianClash">The median over the chords as heard of the clash figure, the tune with itself left out.</param>
/// <param name="BellsUsed">The bells used, lowest first.</param>
/// <param name="PedalsTo">The highest pedal used; null where the feet rest.</param>
/// <param name="RootLowest">The share of chords as heard that have a bass bell on root or slash bass, 0..1; 0 where the tune lies below.</param>
/// <param name="HeaviestFrom">Start of the passage of 10 s with most strokes on heavy bells (written below middle C).</param>
/// <param name="HeaviestStrokes">How many such strokes it has.</param>
/// <param name="LeftOut">What of the sheet was left out, eased or lifted, in sentences.</param>
public sealed record Totals(
    long Price,
    double ClashDose,
    double MedianClash,
    Items<WrittenNote> BellsUsed,
    WrittenNote? PedalsTo,
    double RootLowest,
    Seconds HeaviestFrom,
    int HeaviestStrokes,
    Items<string> LeftOut)
{
    /// <summary>The clash dose of the tune with itself, which is in no other figure here.</summary>
    public double TuneDose { get; init; }

    /// <summary>How far the chords carry on the mean, re one stroke of C4 over the same time; the tune included.</summary>
    public Decibels Carry { get; init; }

    /// <summary>The same if every bell were struck at 0 dB, tune and heavy bells too: how far the bells carry that were chosen.</summary>
    public Decibels CarryAtEqualTouch { get; init; }

    /// <summary>Around which frequency the energy of all chords lies, the tune included; 0 where nothing is struck.</summary>
    public Hertz Brightness { get; init; }

    /// <summary>New chords on strong beats and their bass bells; where the tune lies below none has one.</summary>
    public StrongBeats StrongBeats { get; init; } = StrongBeats.None;

    /// <summary>The clash dose that the close root position, struck together in every slot, would have; 0 where the tower lacks a bell for it.</summary>
    public double CloseRootDose { get; init; }

    /// <summary>How many strokes the close root positions would take, the tune not counted.</summary>
    public int CloseRootStrokes { get; init; }

    /// <summary>
    /// The same of a plain hand: root in the lowest octave of the pedals, third and fifth nearest to middle C; 0 where the
    /// tower lacks a bell for it.
    /// </summary>
    public double PlainHandDose { get; init; }

    /// <summary>How tiring its heavy strokes are.</summary>
    public Fatigue Fatigue { get; init; } = Fatigue.None;

    /// <summary>Strokes of the tune that are hard to hear over what is struck with them.</summary>
    public SoftTune SoftTune { get; init; } = SoftTune.None;

    /// <summary>How many strokes the plain hand would take, the tune not counted.</summary>
    public int PlainHandStrokes { get; init; }
}

/// <summary>What the search can say of its answer.</summary>
/// <param name="Price">The price found, in thousandths of a clash unit.</param>
/// <param name="Bound">No arrangement that keeps the rules is cheaper than this, in thousandths; null where nothing was shown.</param>
/// <param name="Starts">From how many starts the search went.</param>
public sealed record SearchStatus(long Price, long? Bound, int Starts)
{
    /// <summary>Whether the time limit came before the search, or the working out of the reasons, was through.</summary>
    public bool WasCutShort { get; init; }

    /// <summary>"proven", "within 3.2 % of the best possible", or "best of 3 starts"; and whether the time limit came.</summary>
    public override string ToString() => Bound switch
    {
        { } bound when Price <= bound => "proven: no arrangement of this sheet under these settings is cheaper",
        { } bound when bound > 0 => FormattableString.Invariant(
            $"within {Math.Ceiling(1000.0 * (Price - bound) / bound) / 10:0.0} % of the best possible") + (WasCutShort ? "; the time limit was reached" : ""),
        _ => $"best of {Starts} starts" + (WasCutShort ? "; the time limit was reached before any bound" : ""),
    };
}
