using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.Bells;

/// <summary>Reads keys, and ranges of them, from the words of a tower file. What is wrong is reported and left out.</summary>
internal sealed class KeyWords(List<Problem> problems)
{
    /// <summary>One key.</summary>
    public TomlWord<WrittenNote>? Note(TomlWord<string>? text)
    {
        if (text is null)
        {
            return null;
        }

        if (NoteSpelling.TryMidi(text.Value, out var midi))
        {
            return new TomlWord<WrittenNote>(WrittenNote.AtMidi(midi), text.Where);
        }

        problems.Add(new Problem(text.Where, $"'{text.Value}' is no key", "a note with its octave, \"C4\" (middle C) or \"F#3\""));
        return null;
    }

    /// <summary>The keys between which a tune is at home; null where the file does not say.</summary>
    /// <param name="head">The head of the file.</param>
    /// <param name="word">The word that names them.</param>
    /// <param name="keys">The keys that have a bell, lowest first; null where they are not known.</param>
    public TuneHome? Home(TomlSection head, string word, List<WrittenNote>? keys)
    {
        if (head.Texts(word) is not { } texts)
        {
            return null;
        }

        var ends = texts.Select(Note).OfType<TomlWord<WrittenNote>>().ToList();
        if (ends.Count != 2 || ends[0].Value > ends[1].Value)
        {
            problems.Add(new Problem(head.PlaceOf(word), $"'{word}' does not name a range of keys", "two keys, the lowest and the highest: [\"C5\", \"C6\"]"));
            return null;
        }

        foreach (var end in ends.Where(e => keys is not null && (e.Value < keys[0] || e.Value > keys[^1])))
        {
            problems.Add(new Problem(end.Where, $"the key {end.Value} does not lie in the compass", $"a key from {keys![0]} to {keys[^1]}"));
        }

        return new TuneHome(ends[0].Value, ends[1].Value);
    }
}
