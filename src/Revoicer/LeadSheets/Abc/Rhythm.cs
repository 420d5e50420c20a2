using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Tuplets and broken rhythm: by how much the next notes are longer or shorter than written.</summary>
internal sealed class Rhythm(Remarks remarks)
{
    // The shortest part of a quarter that all lengths are multiples of: a 1/1024 note, and tuplets of 3, 5, 7 and 9 of it.
    private const int PartsOfQuarter = 256 * 9 * 5 * 7;

    // Three dots, ">>>", leave an eighth of the length.
    private const int MostDots = 3;

    private static readonly Beats Longest = Beats.OfQuarters(256);

    private (AbcFactor Factor, int Left, Place Where)? _tuplet;
    private (AbcFactor Factor, Place Where)? _broken;

    /// <summary>Takes the length of the next note or rest as it is heard; null with a problem where it is none that can be written.</summary>
    public Beats? Next(Beats written, Place where)
    {
        var length = written;
        if (_tuplet is { } tuplet)
        {
            length *= tuplet.Factor;
            _tuplet = tuplet.Left > 1 ? tuplet with { Left = tuplet.Left - 1 } : null;
        }

        if (_broken is { } broken)
        {
            length *= broken.Factor;
            _broken = null;
        }

        return IsWritable(length, where) ? length : null;
    }

    /// <summary>Whether a length can be written as a note; a problem where it cannot.</summary>
    public bool IsWritable(Beats length, Place where)
    {
        if (PartsOfQuarter % length.Denominator == 0 && length <= Longest)
        {
            return true;
        }

        remarks.Refuse(where, $"a note of {LengthWords.Quarters(length)}", $"note values from 1/1024 to {LengthWords.Quarters(Longest)}, and tuplets of them");
        return false;
    }

    /// <summary>In the time of how many notes a tuplet of p is heard where it does not say (standard 2.1, section 4.13).</summary>
    public static int UsualTime(int p, Meter? meter) => p switch
    {
        2 or 4 or 8 => 3,
        3 or 6 => 2,
        _ => meter is { IsCompound: true } ? 3 : 2,
    };

    /// <summary>The next notes, as many as said, are heard in a tuplet: p in the time of q.</summary>
    public void BeginTuplet(int p, int q, int notes, Place where)
    {
        if (_tuplet is not null)
        {
            remarks.Refuse(where, "a tuplet begins inside a tuplet", "the notes of the one before it first");
        }

        _tuplet = (new AbcFactor(q, p), notes, where);
    }

    /// <summary>Broken rhythm between two notes: gives the factor for the one before, keeps that of the one after.</summary>
    /// <param name="dots">How many signs stand there.</param>
    /// <param name="isLongFirst">Whether they are '>'.</param>
    /// <param name="where">The signs.</param>
    public AbcFactor Break(int dots, bool isLongFirst, Place where)
    {
        if (dots > MostDots || _broken is not null)
        {
            remarks.Refuse(where, "signs of broken rhythm that mean nothing together", "'>', '>>' or '>>>' (or '<') between two notes");
            return AbcFactor.One;
        }

        var unit = 1 << dots;
        var (longer, shorter) = (new AbcFactor((2 * unit) - 1, unit), new AbcFactor(1, unit));
        _broken = (isLongFirst ? shorter : longer, where);
        return isLongFirst ? longer : shorter;
    }

    /// <summary>Broken rhythm does not reach over a bar line.</summary>
    public void EndBar()
    {
        if (_broken is { } broken)
        {
            remarks.Refuse(broken.Where, "broken rhythm with no note after it in the bar", "a note or rest before the bar line");
            _broken = null;
        }
    }

    /// <summary>A tuplet that lacks notes; to be called at the tune's end.</summary>
    public void Finish()
    {
        EndBar();
        if (_tuplet is { } tuplet)
        {
            remarks.Warn(tuplet.Where, $"the tune ends {(tuplet.Left == 1 ? "one note" : $"{tuplet.Left} notes")} before this tuplet does", "as many notes as it says");
        }
    }
}
