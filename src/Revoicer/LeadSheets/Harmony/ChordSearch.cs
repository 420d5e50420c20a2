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

    private readonly Moment[] _moments;
    private readonly int _highestBass;
    private readonly Frontier[] _frontiers = [.. Enumerable.Range(0, MostMoments + 1).Select(_ => new Frontier())];

    private bool _hasSounded;

    private ChordSearch(Moment[] moments)
    {
        _moments = moments;
        var sounding = moments.Where(m => !m.IsSilent).ToArray();
        var (lowest, highest) = sounding.Length == 0 ? (0, 0) : (sounding.Min(m => m.Lowest), sounding.Max(m => m.Highest));
        _highestBass = lowest + (int)((highest - lowest) * BassRange);
    }

    /// <summary>The chords from their moments on, in order; the first from the first moment.</summary>
    /// <param name="moments">The moments in order, at least one.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<ChordFrom> Best(Moment[] moments, CancellationToken cancel)
    {
        var search = new ChordSearch(moments);
        search.At(0).Change(0, ChordGuess.None, 0, null);
        for (var from = 0; from < moments.Length; from++)
        {
            cancel.ThrowIfCancellationRequested();
            search.GoOn(from);
            search.At(from).Clear();
        }

        var chords = new List<ChordFrom>();
        for (var chord = search.At(moments.Length).CheapestRow; chord is not null; chord = chord.Before)
        {
            chords.Add(chord);
        }

        chords.Reverse();
        return chords;
    }

    private Frontier At(int moment) => _frontiers[moment % _frontiers.Length];

    private void GoOn(int from)
    {
        var (before, evidence) = (At(from), new Evidence(_highestBass));
        Unclear(from);
        var end = Math.Min(_moments.Length, from + (_moments.Length > LongPassage ? MostInLongPassage : MostMoments));
        for (var to = from + 1; to <= end && _moments[to - 1].Bar == _moments[from].Bar; to++)
        {
            evidence.Add(_moments[to - 1]);
            if (evidence.Sounding == 0)
            {
                At(to).HoldAll(before);
                continue;
            }

            // Among equals the chord whose root is nearest above the lowest note is taken, so that the key does not matter.
            for (var k = 0; k < ChordGuess.Tones; k++)
            {
                OnRoot((evidence.Lowest + k) % ChordGuess.Tones, from, evidence, before, At(to));
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

    // Every kind of chord on a root, from a moment on to the last of the evidence.
    private void OnRoot(int root, int from, Evidence evidence, Frontier before, Frontier after)
    {
        var change = _moments[from].Change;
        var changeOnRoot = (long)(change * ChordPrices.SameRoot);
        var (onRoot, rowOnRoot) = before.OnRoot(root);
        for (var kind = 0; kind < ChordTemplate.All.Count; kind++)
        {
            var template = ChordTemplate.All[kind];
            var chord = new ChordGuess(kind, root, evidence.HasBass ? evidence.Lowest : root);
            var (overAny, rowOverAny) = before.OverAnyBass(chord);
            var isKnown = evidence.TonesOf(template, root) >= FewestTones;
            if (!isKnown && rowOverAny is null)
            {
                continue;
            }

            // The cheapest way to begin it; of equal ones the first.
            var (bass, missing, lasting) = (evidence.Bass(template, chord), evidence.Missing(template, root), evidence.Lasting(template, chord));
            var (price, row) = (Frontier.Never, before.CheapestRow);
            if (isKnown)
            {
                price = before.Cheapest + change + template.Rarity + missing + bass;
                var onSameRoot = onRoot + changeOnRoot + template.Rarity + evidence.MissingOnSameRoot(template, root) + bass;
                (price, row) = rowOnRoot is not null && onSameRoot < price ? (onSameRoot, rowOnRoot) : (price, row);
            }

            if (rowOverAny is not null && evidence.HasBass)
            {
                var overOtherBass = overAny + changeOnRoot + missing + bass;
                (price, row) = overOtherBass < price ? (overOtherBass, rowOverAny) : (price, row);
            }

            // Held it is asked for what it lacks, but not where a single line goes on over it, or high notes alone.
            var lacking = evidence.HasBass ? missing : 0;
            var (held, rowHeld) = before.EndingWith(chord);
            if (held + lacking < price)
            {
                after.Hold(held + lacking + lasting, rowHeld!);
            }
            else
            {
                after.Change(price + lasting, chord, from, row);
            }

            // Without a bass it is held over whatever bass it had.
            for (var k = 1; k < ChordGuess.Tones && rowOverAny is not null && !evidence.HasBass; k++)
            {
                var over = chord with { Bass = (root + k) % ChordGuess.Tones };
                (held, rowHeld) = before.EndingWith(over);
                if (rowHeld is not null)
                {
                    after.Hold(held + evidence.Lasting(template, over), rowHeld);
                }
            }
        }
    }
}
