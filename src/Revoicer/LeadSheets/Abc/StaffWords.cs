using System.Globalization;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads the words about clef and octave that may stand in "K:" and "V:".</summary>
internal static class StaffWords
{
    // Octaves further away would leave the range of notes.
    private const int MostOctaves = 4;

    private static readonly string[] Clefs =
        ["treble", "alto", "tenor", "bass", "perc", "none", "treble1", "alto1", "alto2", "bass3", "G", "C", "F", "P"];

    // They say how a staff looks, what it is called or how it sounds elsewhere, and change no note.
    private static readonly string[] Silent =
    [
        "middle", "m", "stafflines", "staffscale", "name", "nm", "subname", "snm", "sname", "stem", "up", "down", "merge",
        "style", "dyn", "gstem", "lyrics", "bracket", "brace", "space", "program", "volume", "pan", "staves",
    ];

    /// <summary>Whether a word speaks of the staff and not of the key.</summary>
    public static bool IsOne(string word) => word.Contains('=', StringComparison.Ordinal) || (word.Length > 1 && IsClef(word));

    /// <summary>Takes one word; the octaves are set where it names a clef or an octave.</summary>
    public static void Read(AbcPiece word, ref int octaves, Remarks remarks)
    {
        var equals = word.Text.IndexOf('=', StringComparison.Ordinal);
        var name = equals < 0 ? "" : word.Text[..equals];
        var value = word.Text[(equals + 1)..].Trim('"');
        if (name is "" or "clef" && IsClef(value))
        {
            octaves = OctavesOf(value);
        }
        else if (name is "octave" or "oct")
        {
            ReadOctave(word, value, ref octaves, remarks);
        }
        else if (name is "transpose" or "t")
        {
            remarks.WarnOnce(word.Where, $"'{Quoted.Text(name)}=' is not followed", "the notes as they are to be played");
        }
        else if (!Silent.Contains(name == "" ? value : name))
        {
            remarks.WarnOnce(word.Where, $"'{Quoted.Text(word.Text)}' is not known here and is passed over", "a clef, octave=, middle= or name=");
        }
    }

    private static void ReadOctave(AbcPiece word, string value, ref int octaves, Remarks remarks)
    {
        if (int.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) <= MostOctaves)
        {
            octaves = number;
        }
        else
        {
            remarks.Refuse(word.Where, $"'{Quoted.Text(value)}' is no number of octaves", $"a whole number from -{MostOctaves} to {MostOctaves}");
        }
    }

    private static bool IsClef(string word) => Clefs.Contains(WithoutOctave(word).TrimEnd(',', '\'', '1', '2', '3', '4', '5')) || Clefs.Contains(WithoutOctave(word));

    private static string WithoutOctave(string clef) =>
        clef.EndsWith("+8", StringComparison.Ordinal) || clef.EndsWith("-8", StringComparison.Ordinal) ? clef[..^2] : clef;

    // A clef with +8 or -8 is played an octave higher or lower (standard 2.1, section 4.6).
    private static int OctavesOf(string clef) =>
        clef.EndsWith("+8", StringComparison.Ordinal) ? 1 : clef.EndsWith("-8", StringComparison.Ordinal) ? -1 : 0;
}
