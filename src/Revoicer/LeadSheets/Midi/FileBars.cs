using System.Globalization;
using Revoicer.Music;
using Revoicer.Smf;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Midi;

/// <summary>The bars of a file as a sheet has them, with keys and tempi.</summary>
internal sealed class FileBars
{
    // Tempi are taken to the nearest 24th of a quarter, so that their places are no finer than a sheet may have.
    private const int TempoPlaces = 24;

    // What the arrangement file can hold (docs/files.md): quarter notes a minute.
    private const double SlowestQuarters = 4;
    private const double FastestQuarters = 6000;

    // More than any piece has; every stroke is timed by walking through them.
    private const int MostTempi = 10_000;

    private const int AssumedPerMinute = (int)SmfNumbers.Minute / SmfNumbers.AssumedQuarter;

    private readonly BarLines _bars;
    private readonly int _count;
    private readonly Place _whole;
    private readonly Remarks _remarks;
    private readonly ILookup<int, TempoChange> _tempi;

    /// <summary>Takes what the tracks say.</summary>
    /// <param name="tracks">The tracks.</param>
    /// <param name="speeds">The tempi of all of them, in order of time.</param>
    /// <param name="bars">The bars.</param>
    /// <param name="count">How many of them the sheet has.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public FileBars(IReadOnlyList<SmfTrack> tracks, IReadOnlyList<SpeedEvent> speeds, BarLines bars, int count, Place whole, Remarks remarks)
    {
        (_bars, _count, _whole, _remarks) = (bars, count, whole, remarks);
        var changes = Changes(speeds).ToArray();
        if (changes.Length > MostTempi)
        {
            remarks.Refuse(whole, string.Create(CultureInfo.InvariantCulture, $"{changes.Length} changes of tempo"), string.Create(CultureInfo.InvariantCulture, $"at most {MostTempi}"));
        }

        Opening = changes is [(0, { From: var from, Tempo: var tempo }), ..] && from == Beats.Zero ? tempo : Assumed(changes.Length > 0);
        _tempi = changes.Where(c => c.Bar > 0 || c.Change.From > Beats.Zero).ToLookup(c => c.Bar, c => c.Change);

        Keys = KeysOf(tracks);
    }

    /// <summary>The speed at the beginning.</summary>
    public Tempo Opening { get; }

    /// <summary>The key of each bar; null before the first signature.</summary>
    public IReadOnlyList<KeySignature?> Keys { get; }

    /// <summary>The bars without notes, with no chord symbols over them.</summary>
    public Items<WrittenBar> Written()
    {
        var read = Enumerable.Range(0, _count).Select(Bar).ToArray();
        return new SheetBars(read, _remarks).Written().ToItems();
    }

    private ReadBar Bar(int index)
    {
        var bar = new ReadBar
        {
            Meter = _bars.MeterOf(index),
            Key = Keys[index] is { } key && index > 0 && key != Keys[index - 1] ? KeyAlterations.Of(key, key.Fifths) : null,
            Length = _bars.Length(index),
            Where = _whole,
            EndsSection = index + 1 == _count,
        };
        bar.Tempi.AddRange(_tempi[index]);
        return bar;
    }

    // Of several tempi at one place the last holds, and one that changes nothing is no change.
    private IEnumerable<(int Bar, TempoChange Change)> Changes(IReadOnlyList<SpeedEvent> speeds)
    {
        var playable = speeds.Where(IsPlayable)
            .Where(s => s.Tick <= _bars.LastTick)
            .Select(s => (s.Microseconds, _bars.Nearest(s.Tick, TempoPlaces).Place))
            .GroupBy(s => s.Place)
            .Select(same => same.Last());
        var before = 0;
        foreach (var (microseconds, place) in playable)
        {
            if (place.Bar < _count && microseconds != before)
            {
                yield return (place.Bar, new TempoChange(Beats.OfQuarters(place.Step, TempoPlaces), Speed(microseconds, _bars.MeterOf(place.Bar))));
                before = microseconds;
            }
        }
    }

    private bool IsPlayable(SpeedEvent speed)
    {
        var isPlayable = SmfNumbers.Minute / speed.Microseconds is >= SlowestQuarters and <= FastestQuarters;
        if (!isPlayable)
        {
            _remarks.WarnOnce(_whole, "a tempo that nobody plays is passed over", "4 to 6000 quarters a minute");
        }

        return isPlayable;
    }

    private Tempo Assumed(bool isLater)
    {
        _remarks.Warn(_whole, string.Create(CultureInfo.InvariantCulture, $"the file has no tempo{(isLater ? " at its beginning" : "")}; {AssumedPerMinute} quarters a minute are assumed, as the standard says"), "a tempo");
        return new Tempo(Beats.OfQuarters(1), AssumedPerMinute);
    }

    // Files round the length of a quarter to microseconds: of all speeds that come to the same the one with the fewest digits
    // is meant. Compound metres count dotted notes.
    private static Tempo Speed(int microseconds, Meter meter)
    {
        var unit = meter.IsCompound ? meter.Beat : Beats.OfQuarters(1);
        var exact = SmfNumbers.Minute / microseconds / unit.Quarters;
        var round = Enumerable.Range(0, 6).Select(digits => Math.Round(exact, digits)).Where(r => Math.Round(SmfNumbers.Minute / (r * unit.Quarters)) == microseconds);
        return new Tempo(unit, round.Append(exact).First());
    }

    // Every part may have its own signature; of several at one tick the first track's is the piece's.
    private IReadOnlyList<KeySignature?> KeysOf(IReadOnlyList<SmfTrack> tracks)
    {
        var changes = tracks.SelectMany(t => t.Keys)
            .GroupBy(k => k.Tick)
            .OrderBy(same => same.Key)
            .GroupBy(same => BarFrom(same.Key), same => same.First().Key)
            .ToDictionary(same => same.Key, same => same.Last());
        var keys = new KeySignature?[_count];
        for (var bar = 0; bar < _count; bar++)
        {
            keys[bar] = changes.TryGetValue(bar, out var key) ? key : bar > 0 ? keys[bar - 1] : null;
        }

        return keys;
    }

    // A key inside a bar holds from the next one on.
    private int BarFrom(long tick)
    {
        var place = _bars.Nearest(Math.Min(tick, _bars.LastTick), TempoPlaces).Place;
        return place.Step == 0 ? place.Bar : place.Bar + 1;
    }
}
