namespace Revoicer.LeadSheets.Harmony;

/// <summary>
/// Finds the cheapest row of chords over the moments of a passage by dynamic programming. A chord begins with some moments of
/// one bar, and is held over more, in this bar or the next, for nothing but the tones outside it: what it lacks is asked once,
/// since a broken chord strikes its tones one after another.
/// </summary>
internal sealed class ChordSearch
{
    // A chord is judged by so many moments at most where it begins. A bar of 12/8 in eighths has twelve.
    private const int MostMoments = 12;

    // In a passage of more moments than any piece of ten minutes has, by fewer: chords are held over more all the same.
    private const int LongPassage = 5_000;
    private const int MostInLongPassage = 4;

    // Two tones are the least that a chord can be known by.
    private const int FewestTones = 2;

    // Where the lowest note lies in the top third of what the passage has from lowest to highest, it is no bass: another has
    // been struck, or will be. An estimate.
    private const double BassRange = 2.0 / 3;

    private readonly IReadOnlyList<Moment> _moments;
    private readonly int _highestBass;
    private readonly Frontier[] _frontiers = [.. Enumerable.Range(0, MostMoments + 1).Select(_ => new Frontier())];

    // Among equals the chord whose root is nearest above the lowest note is taken, so that the key does not matter.
    private int _reference;
    private bool _hasSounded;

    private ChordSearch(IReadOnlyList<Moment> moments)
    {
        _moments = moments;
        var sounding = moments.Where(m => !m.IsSilent).ToArray();
        var (lowest, highest) = sounding.Length == 0 ? (0, 0) : (sounding.Min(m => m.Lowest), sounding.Max(m => m.Highest));
        _highestBass = lowest + (int)((highest - lowest) * BassRange);
    }

    /// <summary>The chords from their moments on, in order; the first from the first moment.</summary>
    /// <param name="moments">The moments in order, at least one.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<ChordFrom> Best(IReadOnlyList<Moment> moments, CancellationToken cancel)
    {
        var search = new ChordSearch(moments);
        search.At(0).Change(0, ChordGuess.None, 0, null);
        for (var from = 0; from < moments.Count; from++)
        {
            cancel.ThrowIfCancellationRequested();
            search.GoOn(from);
            search.At(from).Clear();
        }

        var chords = new List<ChordFrom>();
        for (var chord = search.At(moments.Count).CheapestRow; chord is not null; chord = chord.Before)
        {
            chords.Add(chord);
        }

        chords.Reverse();
        return chords;
    }

    private Frontier At(int moment) => _frontiers[moment % _frontiers.Length];

    private void GoOn(int from)
    {
        var evidence = new Evidence(_highestBass);
        Unclear(from);
        for (var to = from + 1; to <= Math.Min(_moments.Count, from + (_moments.Count > LongPassage ? MostInLongPassage : MostMoments)) && _moments[to - 1].Bar == _moments[from].Bar; to++)
        {
            evidence.Add(_moments[to - 1]);
            if (evidence.Sounding == 0)
            {
                At(to).HoldAll(At(from));
                continue;
            }

            _reference = evidence.Lowest;
            for (var k = 0; k < ChordGuess.Tones; k++)
            {
                for (var kind = 0; kind < ChordTemplate.All.Count; kind++)
                {
                    Chord(kind, (_reference + k) % ChordGuess.Tones, from, to, evidence);
                }
            }
        }
    }

    private void Unclear(int from)
    {
        var moment = _moments[from];
        var beats = moment.IsSilent ? 0 : moment.Length * ChordPrices.UnclearBeat / 1000;

        // The silence before the first note is no chord for nothing; what sounds then is called unclear at its price.
        beats += !moment.IsSilent && !_hasSounded ? ChordPrices.Unclear : 0;
        _hasSounded |= !moment.IsSilent;
        var (cost, row) = At(from).EndingWith(ChordGuess.None);
        if (row is not null)
        {
            At(from + 1).Hold(cost + beats, row);
        }

        At(from + 1).Change(At(from).Cheapest + moment.Change + ChordPrices.Unclear + beats, ChordGuess.None, from, At(from).CheapestRow);
    }

    private void Chord(int kind, int root, int from, int to, Evidence evidence)
    {
        var template = ChordTemplate.All[kind];
        var chord = new ChordGuess(kind, root, evidence.HasBass ? evidence.Lowest : root);
        var (before, after) = (At(from), At(to));
        var lasting = evidence.Lasting(template, chord);
        if (evidence.TonesOf(template, root) >= FewestTones)
        {
            var change = _moments[from].Change + evidence.Beginning(template, chord);
            after.Change(before.Cheapest + change + lasting, chord, from, before.CheapestRow);
        }

        var (onRoot, rowOnRoot) = before.OnRoot(root);
        if (rowOnRoot is not null && evidence.TonesOf(template, root) >= FewestTones)
        {
            var change = (long)(_moments[from].Change * ChordPrices.SameRoot) + evidence.BeginningOnSameRoot(template, chord);
            after.Change(onRoot + change + lasting, chord, from, rowOnRoot);
        }

        var (cost, row) = before.OverAnyBass(chord);
        if (row is null)
        {
            return;
        }

        if (evidence.HasBass)
        {
            var otherBass = (long)(_moments[from].Change * ChordPrices.SameRoot) + evidence.Bass(template, chord);
            after.Change(cost + otherBass + evidence.Lacking(template, chord) + lasting, chord, from, row);
        }

        Hold(chord, evidence, before, after);
    }

    // With a bass the chord over that bass goes on; without one the chord over whatever bass it had.
    private static void Hold(ChordGuess chord, Evidence evidence, Frontier before, Frontier after)
    {
        var template = ChordTemplate.All[chord.Kind];
        for (var k = 0; k < (evidence.HasBass ? 1 : ChordGuess.Tones); k++)
        {
            var over = chord with { Bass = (chord.Bass + k) % ChordGuess.Tones };
            var (cost, row) = before.EndingWith(over);
            if (row is not null)
            {
                after.Hold(cost + evidence.Lacking(template, over) + evidence.Lasting(template, over), row);
            }
        }
    }
}
