using System.Text.RegularExpressions;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;

namespace Revoicer.Benchmarks;

/// <summary>
/// What an arrangement is like bar by bar, as a player reads it; each figure is as ../shared/tools/music.py defines it, in
/// whose order and under whose names they come. A phrase is four full bars, or fewer up to a double bar.
/// </summary>
internal sealed partial class MusicFigures
{
    private const int PhraseBars = 4;

    private readonly Arrangement _made;
    private readonly Choice[] _chords;
    private readonly Stroke[] _tune;
    private readonly Beats[] _onsets;
    private readonly Beats[] _accompaniment;
    private readonly Beats _longest;
    private readonly ArrangedBar[][] _phrases;
    private readonly double _secondsPerQuarter;

    private MusicFigures(Arrangement made)
    {
        _made = made;
        _chords = [.. made.Choices.OrderBy(c => c.Start)];
        _tune = [.. made.Strokes.Where(s => s.IsTune)];
        _onsets = [.. made.Strokes.Select(s => s.Beat).Distinct().Order()];
        _accompaniment = [.. made.Strokes.Where(s => !s.IsTune).Select(s => s.Beat).Distinct().Order()];
        _longest = made.Bars.Max(b => b.Length);
        _phrases = [.. Phrases()];
        var tempo = made.Tempi.Changes[0].Tempo;
        _secondsPerQuarter = 60 / tempo.PerMinute / tempo.Unit.Quarters;
    }

    /// <summary>The figures by name: whole numbers as such, others as doubles, null where there is nothing to count.</summary>
    public static (string Name, object? Value)[] Of(Arrangement made) => [.. new MusicFigures(made).All()];

    // A whole number where one stands in the middle, else the mean of the two that do.
    private static object Median(IEnumerable<int> values)
    {
        int[] sorted = [.. values.Order()];
        return sorted.Length % 2 == 1 ? (object)sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2.0;
    }

    private IEnumerable<(string, object?)> All()
    {
        var bars = _made.Bars.Aggregate(Beats.Zero, (sum, b) => sum + b.Length);
        yield return ("acc/bar", _accompaniment.Length / (bars.Quarters / _longest.Quarters));
        yield return ("still", Still());
        yield return ("pulse", Pulse());
        var slow = _chords.Where(c => c.Length.Quarters * _secondsPerQuarter >= 0.8).ToArray();
        yield return ("silent", Share(slow, c => c.Strokes.Count == 0));
        yield return ("quiet", Share(_chords, c => c.Strokes.Count == 0));
        yield return ("one", Share(slow, c => c.Strokes.Count == 1));
        foreach (var figure in Basses())
        {
            yield return figure;
        }

        yield return ("top", _tune.Length == 0 ? null : Median(_tune.Select(s => s.Note.Midi)));
        yield return ("hi", _tune.Length == 0 ? null : Share(_tune, s => s.Note.Midi >= 84));
        yield return ("hollow", Share([.. _chords.Select(Gap).OfType<int>()], gap => gap > 24));
        var planned = _phrases.Where(p => p.Length == PhraseBars).ToArray();
        yield return ("plans", planned.Length == 0 ? null : planned.Sum(Commonest) / (3.0 * planned.Length));
        var strokes = _made.Strokes.Count(s => !s.IsTune);
        yield return ("strokes", strokes);
        yield return ("clash", _made.Totals.ClashDose);
        yield return ("each", _made.Totals.ClashDose / Math.Max(1, strokes));
    }

    // The whole number 0 where there are none.
    private static object Share<T>(T[] all, Func<T, bool> which) => all.Length == 0 ? (object)0 : all.Count(which) / (double)all.Length;

    private double Still()
    {
        var waits = _onsets.Zip(_onsets.Skip(1), (a, b) => Math.Max(0, ((b - a).Quarters * _secondsPerQuarter) - 1.2)).Sum();
        var whole = (_onsets[^1] - _onsets[0]).Quarters * _secondsPerQuarter;
        return waits / (whole == 0 ? 1 : whole);
    }

    private object Pulse()
    {
        var struck = _onsets.ToHashSet();
        var last = _phrases.Select(p => p[^1].Start).ToHashSet();
        var end = _chords.Max(c => c.Start);
        var beats = _made.Bars.SelectMany(BeatsOf).ToArray();
        return Share(beats, struck.Contains);

        IEnumerable<Beats> BeatsOf(ArrangedBar bar)
        {
            // The beats of a pickup are counted from its end.
            var beat = bar.Meter.Beat;
            var first = bar.Number == 0 && bar.Length < bar.Meter.Bar ? bar.Start + bar.Length - (beat * Beats.WholeTimes(bar.Length, beat)) : bar.Start;
            for (var at = first; at < bar.Start + bar.Length; at += beat)
            {
                if (at <= end && (at == bar.Start || !last.Contains(bar.Start)))
                {
                    yield return at;
                }
            }
        }
    }

    private IEnumerable<(string, object?)> Basses()
    {
        var (steps, kept, same, pairs, change, struck) = (0, 0, 0, 0, 0, 0);
        (int? Asked, int? Sounding, int? Struck)? before = null;
        foreach (var chord in _chords)
        {
            var asked = AskedBass(chord.Symbol);
            var bass = chord.Strokes.Where(s => s.IsPedal).OrderBy(s => s.Beat).ThenBy(s => s.Note).Select(s => (int?)s.Note.Midi).FirstOrDefault();
            var isRight = bass is not null && bass % 12 == asked;
            if (before is { } last && asked is { } now && last.Asked is { } then && now != then)
            {
                change++;
                struck += isRight ? 1 : 0;
                var apart = Math.Min((now - then + 12) % 12, (then - now + 12) % 12);
                if (apart <= 2 && isRight && last.Sounding is { } ringing)
                {
                    steps++;
                    kept += Math.Abs(bass!.Value - ringing) <= 2 ? 1 : 0;
                }
            }

            if (bass is not null && before?.Struck is { } former)
            {
                pairs++;
                same += bass == former ? 1 : 0;
            }

            var rings = before is { } held && bass is null && asked == held.Asked ? held.Sounding : null;
            before = (asked, isRight ? bass : rings, bass);
        }

        yield return ("change", change);
        yield return ("struck", change == 0 ? null : struck / (double)change);
        yield return ("steps", steps);
        yield return ("step", steps == 0 ? null : kept / (double)steps);
        yield return ("same", pairs == 0 ? (object)0 : same / (double)pairs);
    }

    // From the highest pedal to the lowest baton, the tune's among them; null where either is missing.
    private int? Gap(Choice chord)
    {
        var feet = chord.Strokes.Where(s => s.IsPedal).Select(s => s.Note.Midi).ToArray();
        var hands = chord.Strokes.Where(s => !s.IsPedal).Concat(_tune.Where(s => s.Beat >= chord.Start && s.Beat < chord.Start + chord.Length)).Select(s => s.Note.Midi).ToArray();
        return feet.Length == 0 || hands.Length == 0 ? null : hands.Min() - feet.Max();
    }

    // How many bars of a phrase, its last left out, have its commonest rhythm.
    private int Commonest(ArrangedBar[] phrase) => phrase[..^1]
        .GroupBy(bar => string.Join(' ', _accompaniment.Where(b => b >= bar.Start && b < bar.Start + _longest).Select(b => b - bar.Start)))
        .Max(g => g.Count());

    private IEnumerable<ArrangedBar[]> Phrases()
    {
        var phrase = new List<ArrangedBar>();
        foreach (var bar in _made.Bars.Where(b => b.Length == _longest))
        {
            phrase.Add(bar);
            if (phrase.Count == PhraseBars || bar.EndsSection)
            {
                yield return [.. phrase];
                phrase.Clear();
            }
        }

        if (phrase.Count > 0)
        {
            yield return [.. phrase];
        }
    }

    // The slash bass, or else the root.
    private static int? AskedBass(string symbol) => (symbol.Contains('/') ? PitchClassOf(symbol[(symbol.LastIndexOf('/') + 1)..]) : null) ?? PitchClassOf(symbol);

    private static int? PitchClassOf(string text) => Name().Match(text) is not { Success: true } name ? null
        : ("C D EF G A B".IndexOf(name.Value[0]) + name.Value.Skip(1).Sum(c => c is '#' or '♯' ? 1 : -1) + 24) % 12;

    [GeneratedRegex("^[A-G][#b♯♭]*")]
    private static partial Regex Name();
}
