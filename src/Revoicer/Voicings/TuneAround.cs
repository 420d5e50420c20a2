using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>What of the tune a slot has to do with.</summary>
internal sealed class TuneAround
{
    private readonly PlacedTune? _tune;
    private readonly Items<TuneStroke> _strokes;

    // For each stroke the latest end of it and all before it, in seconds; rising, where single ends need not.
    private readonly double[] _until;

    /// <summary>Of a tune; of nothing where there is none.</summary>
    public TuneAround(PlacedTune? tune)
    {
        (_tune, _strokes) = (tune, tune?.Strokes ?? []);
        _until = new double[_strokes.Count];
        for (var i = 0; i < _until.Length; i++)
        {
            _until[i] = Math.Max(_strokes[i].Until.Value, i == 0 ? double.NegativeInfinity : _until[i - 1]);
        }
    }

    /// <summary>The tune between two places, counted from the first: stretches of a sheet under the same tune are one slot.</summary>
    public Items<(WrittenNote Note, Limb Limb, Beats After, long Microseconds)> Within(Beats start, Beats end) =>
        From(i => _strokes[i].Start >= start)
            .TakeWhile(s => s.Start < end)
            .Select(s => (s.Note, s.Limb, s.Start - start, (long)Math.Round((s.Until - s.At).Value * 1e6)))
            .ToItems();

    /// <summary>The strokes around each hearing, hearings that do not differ once.</summary>
    public Items<Items<NearStroke>> Of(IEnumerable<(Seconds From, Seconds To)> hearings) => _tune is null
        ? []
        : hearings
            .Select(h => From(i => _strokes[i].At > h.From - _tune.Around || _until[i] > h.From.Value)
                .TakeWhile(s => s.At < h.To + _tune.Around)
                .Where(s => s.At > h.From - _tune.Around || s.Until > h.From)
                .Select(s => new NearStroke(s.Note, s.Limb, Rounded(s.At - h.From), Rounded(s.Until - h.From)))
                .ToItems())
            .Distinct()
            .ToItems();

    // The strokes from the first for which something holds that holds for all after it too.
    private IEnumerable<TuneStroke> From(Func<int, bool> holds)
    {
        var (low, high) = (0, _strokes.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = holds(middle) ? (low, middle) : (middle + 1, high);
        }

        for (var i = low; i < _strokes.Count; i++)
        {
            yield return _strokes[i];
        }
    }

    // To a microsecond, so that hearings of one passage compare equal.
    private static Seconds Rounded(Seconds seconds) => new(Math.Round(seconds.Value, 6));
}
