using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads what stands behind "K:".</summary>
internal static class KeyField
{
    private const string WhatAKeyIs = "a key such as G, Am, Bb or D mix, or none";

    // The first three letters tell the mode (ABC standard 2.1, section 3.1.14).
    private static readonly (string Start, Mode Mode)[] Modes =
    [
        ("maj", Mode.Major),
        ("ion", Mode.Major),
        ("lyd", Mode.Lydian),
        ("mix", Mode.Mixolydian),
        ("dor", Mode.Dorian),
        ("min", Mode.Minor),
        ("aeo", Mode.Minor),
        ("phr", Mode.Phrygian),
        ("loc", Mode.Locrian),
    ];

    /// <summary>The key; the one so far where the field gives only a clef; null with a problem where it cannot be read.</summary>
    /// <param name="field">What stands behind the colon.</param>
    /// <param name="before">The key so far; null at the head.</param>
    /// <param name="octaves">Takes the octaves by which a clef or "octave=" moves the notes, where there is one.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static KeyAlterations? Read(AbcPiece field, KeyAlterations? before, ref int octaves, Remarks remarks)
    {
        var words = field.Words();
        var taken = 0;
        var key = Keynote(words, ref taken, remarks);
        if (key is null && taken > 0)
        {
            return null;
        }

        key ??= before ?? KeyAlterations.None;
        for (; taken < words.Count; taken++)
        {
            if (words[taken].Text[0] is '^' or '_' or '=')
            {
                key = WithAccidentals(words[taken], key, remarks);
            }
            else
            {
                StaffWords.Read(words[taken], ref octaves, remarks);
            }
        }

        return key;
    }

    private static KeyAlterations? Keynote(IReadOnlyList<AbcPiece> words, ref int taken, Remarks remarks)
    {
        if (words.Count == 0 || StaffWords.IsOne(words[0].Text) || words[0].Text[0] is '^' or '_' or '=')
        {
            return null;
        }

        taken = 1;
        var text = words[0].Text;
        if (text.Equals("none", StringComparison.OrdinalIgnoreCase))
        {
            return KeyAlterations.None;
        }

        // The Highland pipes' scale has F and C sharp; Hp prints them at the staff, HP does not (standard 2.1, section 3.1.14).
        if (text is "HP" or "Hp")
        {
            return KeyAlterations.Of(null, 2);
        }

        if (text[0] is < 'A' or > 'G')
        {
            remarks.Refuse(words[0].Where, $"'{Quoted.Text(text)}' is no key", WhatAKeyIs);
            return null;
        }

        var accidental = text.Length > 1 ? text[1] switch { '#' or '\u266F' => 1, 'b' or '\u266D' => -1, _ => 0 } : 0;
        var tonic = new NoteName(Enum.Parse<Letter>(text[..1]), accidental);
        var mode = text[(accidental == 0 ? 1 : 2)..];
        if (mode.Length == 0 && words.Count > 1 && IsMode(words[1].Text))
        {
            mode = words[1].Text;
            taken = 2;
        }

        return Key(tonic, mode, words[0], remarks);
    }

    private static bool IsMode(string word) =>
        word is "m" || word.Equals("exp", StringComparison.OrdinalIgnoreCase) || ModeOf(word) is not null;

    private static Mode? ModeOf(string word) => word.Length == 0 ? Mode.Major : word == "m" ? Mode.Minor
        : Modes.Where(m => word.All(char.IsAsciiLetter) && word.StartsWith(m.Start, StringComparison.OrdinalIgnoreCase))
            .Select(m => (Mode?)m.Mode)
            .FirstOrDefault();

    private static KeyAlterations? Key(NoteName tonic, string mode, AbcPiece word, Remarks remarks)
    {
        if (mode.Equals("exp", StringComparison.OrdinalIgnoreCase))
        {
            return KeyAlterations.None with { Named = new KeySignature(tonic, Mode.Major) };
        }

        if (ModeOf(mode) is not { } found)
        {
            remarks.Refuse(word.Where, $"'{Quoted.Text(word.Text)}' is no key", WhatAKeyIs);
            return null;
        }

        var key = new KeySignature(tonic, found);
        if (Math.Abs(key.Fifths) > 7)
        {
            remarks.Refuse(word.Where, $"a key of {Math.Abs(key.Fifths)} {(key.Fifths > 0 ? "sharps" : "flats")}", "at most seven");
            return null;
        }

        return KeyAlterations.Of(key, key.Fifths);
    }

    private static KeyAlterations WithAccidentals(AbcPiece word, KeyAlterations key, Remarks remarks)
    {
        var cursor = new AbcCursor(word.Text, word.Where);
        while (!cursor.IsAtEnd)
        {
            var from = cursor.At;
            var alteration = AbcPitch.TakeAccidental(cursor);
            if (alteration is null || char.ToUpperInvariant(cursor.Here) is not (>= 'A' and <= 'G'))
            {
                cursor.Skip();
                remarks.Refuse(cursor.From(from), $"'{Quoted.Text(cursor.TextFrom(from))}' is no accidental of a key", "such as ^f, _b or =c");
                return key;
            }

            key = key.With(Enum.Parse<Letter>(cursor.Here.ToString().ToUpperInvariant()), alteration.Value);
            cursor.Skip();
        }

        return key;
    }
}
