using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>What of a candidate matters to the slot next to it.</summary>
/// <param name="Upper">Which of the slot's sets of tones the hands take.</param>
/// <param name="Line">Which of the slot's <see cref="BassAndFigure"/>s it has.</param>
/// <param name="Left">What it leaves to the slot before, of the slot's <see cref="LeftTones"/>s.</param>
internal readonly record struct Outline(int Upper, int Line, int Left);

/// <summary>What a candidate leaves to the slot before; few of a slot's candidates differ in it.</summary>
/// <param name="Tones">The shared tones that it does not strike.</param>
/// <param name="Bells">How many bells it strikes; 0 where it leaves nothing.</param>
internal readonly record struct LeftTones(PitchClassSet Tones, int Bells);

/// <summary>What a candidate gives to the bass line and to the row of figures; few of a slot's candidates differ in it.</summary>
/// <param name="Bass">MIDI number of its bass pedal; 0 for none.</param>
/// <param name="LastBass">The same at the end of the slot, to which a bass in tenths has moved.</param>
/// <param name="Figure">Its figure.</param>
/// <param name="IsApproach">Whether that last bass is an approach tone.</param>
/// <param name="NotByStep">What its bass costs more where it is not reached by step, in thousandths.</param>
internal readonly record struct BassAndFigure(int Bass, int LastBass, bool IsApproach, Figure Figure, int NotByStep);

/// <summary>A slot with its candidates, the kinds of their strokes, and what each costs by itself.</summary>
internal sealed class PricedSlot
{
    private readonly SlotPrice _price;
    private readonly Outline[] _outlines;
    private readonly List<int[]> _uppers = [];
    private readonly List<BassAndFigure> _lines = [];
    private readonly List<LeftTones> _lefts = [];
    private readonly StrokeTable? _again;
    private readonly Instrument _instrument;
    private readonly IReadOnlyList<long> _apart;

    public PricedSlot(Instrument instrument, Sound sound, Slot slot, Items<Candidate> candidates, ChordsInTime chords, TuneInTime tune)
    {
        _instrument = instrument;
        Slot = slot;
        Candidates = candidates;
        Kinds = new StrokeKinds(slot, candidates, sound.RollStep, instrument.BellAtMidi);
        _price = new SlotPrice(instrument, sound, slot, Kinds, chords, tune);
        _outlines = Outlines(candidates);
        Spread = Kinds.Offsets.Count == 0 ? 0 : Kinds.Offsets.Max() - Kinds.Offsets.Min();
        _apart = Apart(slot, instrument.LongestReach + Spread);
        _again = _apart.Count == 0 ? null : StrokeTable.Between(instrument, Kinds, Kinds, _apart);
        Prices = new long[candidates.Count];
        Voicing? voicing = null;
        var ofVoicing = 0L;
        for (var c = 0; c < Prices.Length; c++)
        {
            // The figures of one voicing are listed in a row.
            if (!ReferenceEquals(voicing, candidates[c].Voicing))
            {
                voicing = candidates[c].Voicing;
                ofVoicing = _price.OfVoicing(voicing).Sum();
            }

            Prices[c] = ofVoicing + _price.OfStrokes(candidates[c], c).Sum() + (_again?.Sum(Kinds.Of(c), Kinds.Of(c)) ?? 0);
        }
    }

    public Slot Slot { get; }

    public Items<Candidate> Candidates { get; }

    public StrokeKinds Kinds { get; }

    /// <summary>Microseconds from the earliest to the latest stroke that a candidate has.</summary>
    public long Spread { get; }

    /// <summary>What each candidate costs by itself, over all hearings, in thousandths.</summary>
    public long[] Prices { get; }

    /// <summary>The different sets of tones in the hands, as MIDI numbers rising.</summary>
    public IReadOnlyList<int[]> Uppers => _uppers;

    /// <summary>The different basses with their figures.</summary>
    public IReadOnlyList<BassAndFigure> Lines => _lines;

    /// <summary>The different things left to the slot before.</summary>
    public IReadOnlyList<LeftTones> Lefts => _lefts;

    public ref readonly Outline Outline(int candidate) => ref _outlines[candidate];

    /// <summary>What a candidate costs by itself, term by term.</summary>
    public TermPrices Terms(int candidate)
    {
        var prices = _price.OfVoicing(Candidates[candidate].Voicing);
        prices.Add(_price.OfStrokes(Candidates[candidate], candidate));
        if (_again is not null)
        {
            var kinds = Kinds.Of(candidate);
            var ringing = _apart.Sum(distance => _instrument.Roughness((Kinds, candidate), (Kinds, candidate), distance));
            prices[Term.Ringing] += ringing;
            prices[Term.Moves] += (int)Math.Min(_again.Sum(kinds, kinds) - ringing, Thousandths.MostForbidden);
        }

        return prices;
    }

    /// <summary>What it costs at one hearing that shared tones do not ring on; see <see cref="SlotPrice.NotRinging"/>.</summary>
    public int NotRinging(LeftTones left, PitchClassSet struck) => _price.NotRinging(left, struck);

    /// <summary>How far a candidate carries.</summary>
    public Decibels Carry(int candidate) => _price.Carry(candidate);

    /// <summary>How far each stroke of the tune lies under what a candidate strikes with it.</summary>
    public IEnumerable<(Seconds After, Decibels Under)> TuneLevels(int candidate) => _price.TuneLevels(candidate);

    private Outline[] Outlines(Items<Candidate> candidates)
    {
        var numbers = new Dictionary<UInt128, int>();
        var lines = new Dictionary<BassAndFigure, int>();
        var lefts = new Dictionary<LeftTones, int>();
        var outlines = new Outline[candidates.Count];
        for (var c = 0; c < outlines.Length; c++)
        {
            var (figure, voicing, _) = candidates[c];
            var key = voicing.Upper.Aggregate(UInt128.Zero, (set, baton) => set | (UInt128.One << baton.Note.Midi));
            if (!numbers.TryGetValue(key, out var upper))
            {
                numbers.Add(key, upper = _uppers.Count);
                _uppers.Add([.. voicing.Upper.Select(b => b.Note.Midi)]);
            }

            var own = new BassAndFigure(voicing.Bass?.Midi ?? 0, candidates[c].LastBass?.Midi ?? 0, candidates[c].Approach is not null, figure, _price.Bass.NotByStep(voicing));
            var ringing = Slot.LeftRinging(voicing);
            var left = new LeftTones(ringing, ringing.Count == 0 ? 0 : voicing.Bells);
            outlines[c] = new Outline(upper, NumberOf(own, lines, _lines), NumberOf(left, lefts, _lefts));
        }

        return outlines;
    }

    private static int NumberOf<T>(T value, Dictionary<T, int> numbers, List<T> values)
        where T : struct
    {
        if (!numbers.TryGetValue(value, out var number))
        {
            numbers.Add(value, number = values.Count);
            values.Add(value);
        }

        return number;
    }

    // From one hearing of the slot to each later one within reach.
    private static IReadOnlyList<long> Apart(Slot slot, long reach) =>
        [.. slot.Hearings
            .SelectMany(_ => slot.Hearings, (a, b) => StrokeKinds.Microseconds(b.At) - StrokeKinds.Microseconds(a.At))
            .Where(distance => distance > 0 && distance <= reach)];
}
