using System.Globalization;
using Revoicer.Text;

namespace Revoicer.Chords;

/// <summary>Reads the beginning of a suffix: the quality of the triad, then the number that says how far thirds are built.</summary>
internal sealed class SuffixHead(SymbolCursor cursor, ChordDegrees degrees, List<SymbolRemark> warnings)
{
    // Tells "-5" from "m5".
    private readonly char _first = cursor.Next;
    private Quality? _quality;
    private bool _majorSeventh;
    private bool _majorSeventhSign;
    private bool _asksForSeventh;

    /// <summary>Reads a word or sign such as "m", "maj", "+"; none is a major triad.</summary>
    public void ReadQuality()
    {
        if (!cursor.TakeWord(SuffixWords.Qualities, out var quality))
        {
            ReadSmallLetter();
            return;
        }

        _quality = quality;
        switch (quality)
        {
            case Quality.Minor:
                degrees.Alter(new Degree(3, -1));
                TakeMajor(slashAllowed: true);
                break;
            case Quality.Diminished:
                ReadDiminished();
                break;
            case Quality.Augmented:
                degrees.Alter(new Degree(5, 1));
                TakeMajor(slashAllowed: false);
                break;
            case Quality.HalfDiminished:
                Diminish();
                break;
            case Quality.Power:
                degrees.OpenFifth();
                break;
            default:
                _majorSeventh = quality is Quality.Major or Quality.MajorSeventh;
                _majorSeventhSign = quality == Quality.MajorSeventh;
                break;
        }
    }

    /// <summary>Reads 2, 5, 6, 67, 69, 7, 9, 11, 13 or none.</summary>
    public SymbolRemark? ReadNumber()
    {
        var from = cursor.Position;
        var digits = cursor.TakeDigits();
        if (_asksForSeventh && !(digits is "7" or "9" or "11" or "13" || (digits.Length == 0 && _majorSeventhSign)))
        {
            return cursor.Missing(from, digits, "7, 9, 11 or 13 after 'maj'");
        }

        switch (digits)
        {
            case "":
                StackUnnumbered();
                return null;
            case "2":
                degrees.Add(new Degree(9));
                return null;
            case "4":
                return cursor.Unread(from, "can mean several chords here", "'sus4' or 'add4'");
            case "5":
                return ReadFive(from);
            case "6" or "67" or "69":
                ReadSix(digits);
                return null;
            case "7" or "9" or "11" or "13":
                degrees.Stack(int.Parse(digits, CultureInfo.InvariantCulture), Seventh);
                return null;
            default:
                return new SymbolRemark(from, digits.Length, $"'{Quoted.Text(digits)}' is no number of a chord", "2, 5, 6, 69, 7, 9, 11 or 13");
        }
    }

    // "Gd" and "Ea" occur many times in an open collection of dance tunes, always for the diminished and the augmented chord.
    private void ReadSmallLetter()
    {
        if (cursor.Next is not ('a' or 'd') || cursor.After(1) is not ('7' or '/' or SymbolCursor.End))
        {
            return;
        }

        var isAugmented = cursor.Next == 'a';
        warnings.Add(new SymbolRemark(cursor.Position, 1, isAugmented ? "'a' is taken as augmented" : "'d' is taken as diminished", isAugmented ? "'aug'" : "'dim'"));
        cursor.GoTo(cursor.Position + 1);
        _quality = isAugmented ? Quality.Augmented : Quality.Diminished;
        if (isAugmented)
        {
            degrees.Alter(new Degree(5, 1));
        }
        else
        {
            ReadDiminished();
        }
    }

    private void ReadDiminished()
    {
        Diminish();
        TakeMajor(slashAllowed: false);
    }

    private void Diminish()
    {
        degrees.Alter(new Degree(3, -1));
        degrees.Alter(new Degree(5, -1));
    }

    // "mMaj7", "m/maj7", "+M7", "oM7".
    private void TakeMajor(bool slashAllowed)
    {
        var from = cursor.Position;
        var slashed = slashAllowed && cursor.Take('/');
        if (cursor.TakeWord(SuffixWords.Major, out var major))
        {
            _majorSeventh = true;
            _asksForSeventh = true;
            _majorSeventhSign = major == Modifier.MajorSeventhSign;
        }
        else if (slashed)
        {
            cursor.GoTo(from);
        }
    }

    private int Seventh => _majorSeventh ? 0 : _quality == Quality.Diminished ? -2 : -1;

    private void StackUnnumbered()
    {
        if (_majorSeventhSign || _quality is Quality.Dominant or Quality.HalfDiminished)
        {
            degrees.Stack(7, Seventh);
        }
    }

    private SymbolRemark? ReadFive(int from)
    {
        switch (_quality)
        {
            case null:
                degrees.OpenFifth();
                return null;
            case Quality.Augmented when !_majorSeventh:
                return null;
            case Quality.Minor when _first == '-':
                // A minor triad needs no 5 to be named, so the sign before it lowers the fifth.
                degrees.Omit(3);
                degrees.Add(new Degree(3));
                degrees.Alter(new Degree(5, -1));
                return null;
            default:
                return cursor.Unread(from, "says nothing here", "the fifth raised or lowered (#5, b5), or no number");
        }
    }

    private void ReadSix(string digits)
    {
        if (digits == "67")
        {
            degrees.Add(new Degree(7, Seventh));
            degrees.Add(new Degree(13));
            return;
        }

        degrees.Add(new Degree(6));
        var slashNine = digits == "6" && cursor.Sees("/9") && !char.IsAsciiDigit(cursor.After(2));
        if (digits == "69" || (slashNine && cursor.Take("/9")))
        {
            degrees.Add(new Degree(9));
        }
    }
}
