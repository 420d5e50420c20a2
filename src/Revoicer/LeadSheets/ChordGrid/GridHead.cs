using System.Globalization;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.ChordGrid;

/// <summary>Reads the "word: value" lines at the head of a chord grid.</summary>
internal sealed class GridHead(List<Problem> problems)
{
    // The slowest and quickest a metronome of common make goes to, with room (common practice).
    private const double SlowestBeats = 20;
    private const double QuickestBeats = 300;

    // No time of the list has more beats in its bar.
    private static readonly Meter MostBeats = new(4, 4);

    private static readonly string[] Words = ["title", "key", "time", "tempo", "pickup"];

    private static readonly Meter[] Meters =
        [new(2, 4), new(3, 4), new(4, 4), new(6, 8), new(9, 8), new(12, 8), new(2, 2)];

    private readonly Dictionary<string, (string Value, Place Where)> _given = [];

    /// <summary>Whether a line is one of the head's: a word, then a colon, before any bar line.</summary>
    public static bool IsHeadLine(string line)
    {
        var start = line.AsSpan().TrimStart();
        var colon = start.IndexOfAny(':', '|');
        return colon > 0 && start[colon] == ':' && char.IsLetter(start[0]);
    }

    public void Take(string text, Place line)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var start = text.Length - text.TrimStart().Length;
        var word = text[start..colon].TrimEnd();
        var value = text[(colon + 1)..];
        var valueStart = colon + 1 + (value.Length - value.TrimStart().Length);
        value = value.Trim();
        var wordPlace = line.Part(start, word.Length);
        if (!Words.Contains(word))
        {
            var hint = NearestWord.To(word, Words) is { } near ? $"'{near}'" : "one of " + string.Join(", ", Words);
            problems.Add(new Problem(wordPlace, $"'{Quoted.Text(word)}' is no word of the head", hint));
        }
        else if (_given.ContainsKey(word))
        {
            problems.Add(new Problem(wordPlace, $"'{word}' stands here a second time", "each word of the head once"));
        }
        else if (value.Length == 0)
        {
            problems.Add(new Problem(wordPlace, $"'{word}' has no value", $"'{word}: {Example(word)}'"));
        }
        else
        {
            _given.Add(word, (value, line.Part(valueStart, value.Length)));
        }
    }

    public string? Title => _given.TryGetValue("title", out var given)
        ? string.Concat(given.Value.Where(Quoted.IsVisible))
        : null;

    /// <summary>Whether the head gives a time, readable or not.</summary>
    public bool NamesMeter => _given.ContainsKey("time");

    public KeySignature? Key => GivenValue<KeySignature>(
        "key",
        value => KeySignature.TryParse(value, out var key) ? key : null,
        "a key such as G, 'Bb major' or 'F# minor', of at most seven sharps or flats");

    public Meter? Meter => GivenValue<Meter>(
        "time",
        value => Meters.Where(m => m.ToString() == value).Select(m => (Meter?)m).FirstOrDefault(),
        "one of " + string.Join(", ", Meters));

    /// <summary>The speed. It is checked even where the time it counts in could not be read, and then counts quarters.</summary>
    public Tempo? Tempo(Meter? time) => GivenValue<Tempo>(
        "tempo",
        value => double.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var beats)
            && beats is >= SlowestBeats and <= QuickestBeats ? new Tempo((time ?? MostBeats).Beat, beats) : null,
        $"a number from {SlowestBeats} to {QuickestBeats}, the beats a minute");

    /// <summary>
    /// The beats of a first bar that is not whole; null where it is whole. Where the time could not be read it may have as
    /// many as any time allows, so that no number is blamed that would be right.
    /// </summary>
    public int? Pickup(Meter? time)
    {
        var most = (time ?? MostBeats).BeatsInBar - 1;
        return GivenValue<int>(
            "pickup",
            value => int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var beats)
                && beats >= 1 && beats <= most ? beats : null,
            most == 1 ? "1, the beats of the first bar" : $"a whole number from 1 to {most}, the beats of the first bar");
    }

    private T? GivenValue<T>(string word, Func<string, T?> read, string expected)
        where T : struct
    {
        if (!_given.TryGetValue(word, out var given))
        {
            return null;
        }

        var value = read(given.Value);
        if (value is null)
        {
            problems.Add(new Problem(given.Where, $"'{Quoted.Text(given.Value)}' is no {word} that can be read", expected));
        }

        return value;
    }

    private static string Example(string word) => word switch
    {
        "title" => "Evening on the Quay",
        "key" => "G",
        "time" => "3/4",
        "tempo" => "96",
        _ => "1",
    };
}
