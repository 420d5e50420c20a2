using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>A note value as written: a name of note-type-value (MusicXML 4.0) and augmentation dots.</summary>
/// <param name="Type">"quarter".</param>
/// <param name="Dots">0 or 1.</param>
internal readonly record struct NoteValue(string Type, int Dots)
{
    private static readonly string[] Types =
        ["breve", "whole", "half", "quarter", "eighth", "16th", "32nd", "64th", "128th", "256th", "512th", "1024th"];

    private static readonly Beats Longest = Beats.OfQuarters(8);

    /// <summary>How many beams it has in a group: 1 for an eighth; 0 and less for what has a bare stem or none.</summary>
    public int Beams => Array.IndexOf(Types, Type) - 3;

    /// <summary>The value that lasts exactly so long; null where it takes several.</summary>
    public static NoteValue? Of(Beats length)
    {
        var plain = Longest;
        foreach (var type in Types)
        {
            if (length == plain)
            {
                return new NoteValue(type, 0);
            }

            if (length * 2 == plain * 3)
            {
                return new NoteValue(type, 1);
            }

            plain /= 2;
        }

        return null;
    }

    /// <summary>The longest value without dot that is not longer; the shortest there is where all are.</summary>
    public static Beats LongestWithin(Beats length)
    {
        var plain = Longest;
        for (var i = 1; i < Types.Length && plain > length; i++)
        {
            plain /= 2;
        }

        return plain;
    }
}
