using System.Globalization;

namespace Revoicer.Chords;

/// <summary>
/// Reads what stands between the root and the slash: a quality, a number, then any number of modifiers. Methods that
/// can fail return what is wrong, or null.
/// </summary>
internal sealed class SuffixParser(SymbolCursor cursor)
{
    private const string WhatMayFollow = "an alteration such as b9, or sus, add, omit, or a slash and a bass note";

    private readonly int _start = cursor.Position;
    private readonly char _first = cursor.Next;
    private readonly SuffixItems _items = new(cursor);
    private Quality? _quality;
    private bool _majorSeventh;
    private bool _majorSeventhSign;
    private bool _asksForSeventh;

    public ChordDegrees Degrees => _items.Degrees;

    public List<SymbolRemark> Warnings => _items.Warnings;

    public SymbolRemark? Read()
    {
        if (ReadBlanks() is { } blank)
        {
            return blank;
        }

        ReadQuality();
        return ReadBlanks() ?? ReadNumber() ?? ReadModifiers();
    }

    private SymbolRemark? ReadBlanks()
    {
        var from = cursor.Position;
        if (!cursor.SkipBlanks() || cursor.AtEnd || cursor.Next is '(' or '/')
        {
            return null;
        }

        if (from == _start && cursor.Next is 'b' or '#')
        {
            return cursor.Unread(cursor.Position, "stands apart from its root", "the accidental next to the letter, or the alteration in brackets");
        }

        Warnings.Add(new SymbolRemark(from, cursor.Position - from, "the blank inside a symbol is passed over", "a symbol without blanks"));
        return null;
    }

    private void ReadQuality()
    {
        if (!cursor.TakeWord(SuffixWords.Qualities, out var quality))
        {
            ReadSmallD();
            return;
        }

        _quality = quality;
        switch (quality)
        {
            case Quality.Minor:
                Degrees.Alter(new Degree(3, -1));
                TakeMajor(slashAllowed: true);
                break;
            case Quality.Diminished:
                ReadDiminished();
                break;
            case Quality.Augmented:
                Degrees.Alter(new Degree(5, 1));
                TakeMajor(slashAllowed: false);
                break;
            case Quality.HalfDiminished:
                Diminish();
                break;
            case Quality.Power:
                Degrees.Omit(3);
                break;
            default:
                _majorSeventh = quality is Quality.Major or Quality.MajorSeventh;
                _majorSeventhSign = quality == Quality.MajorSeventh;
                break;
        }
    }

    // "Gd" occurs many times in an open collection of dance tunes, always for the diminished chord.
    private void ReadSmallD()
    {
        if (cursor.Next != 'd' || cursor.After(1) is not ('7' or '/' or SymbolCursor.End))
        {
            return;
        }

        Warnings.Add(new SymbolRemark(cursor.Position, 1, "'d' is taken as diminished", "'dim'"));
        cursor.Take('d');
        _quality = Quality.Diminished;
        ReadDiminished();
    }

    private void ReadDiminished()
    {
        Diminish();
        TakeMajor(slashAllowed: false);
    }

    private void Diminish()
    {
        Degrees.Alter(new Degree(3, -1));
        Degrees.Alter(new Degree(5, -1));
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

    private SymbolRemark? ReadNumber()
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
                Degrees.Add(new Degree(9));
                return null;
            case "4":
                return cursor.Unread(from, "can mean several chords here", "'sus4' or 'add4'");
            case "5":
                return ReadFive(from);
            case "6" or "67" or "69":
                ReadSix(digits);
                return null;
            case "7" or "9" or "11" or "13":
                Degrees.Stack(int.Parse(digits, CultureInfo.InvariantCulture), Seventh);
                return null;
            default:
                return new SymbolRemark(from, digits.Length, $"'{SymbolCursor.Shown(digits)}' is no number of a chord", "2, 5, 6, 69, 7, 9, 11 or 13");
        }
    }

    private int Seventh => _majorSeventh ? 0 : _quality == Quality.Diminished ? -2 : -1;

    private void StackUnnumbered()
    {
        if (_majorSeventhSign || _quality is Quality.Dominant or Quality.HalfDiminished)
        {
            Degrees.Stack(7, Seventh);
        }
    }

    private SymbolRemark? ReadFive(int from)
    {
        switch (_quality)
        {
            case null:
                Degrees.Omit(3);
                return null;
            case Quality.Augmented when !_majorSeventh:
                return null;
            case Quality.Minor when _first == '-':
                // A minor triad needs no 5 to be named, so the sign before it lowers the fifth.
                Degrees.Omit(3);
                Degrees.Add(new Degree(3));
                Degrees.Alter(new Degree(5, -1));
                return null;
            default:
                return cursor.Unread(from, "says nothing here", "the fifth raised or lowered (#5, b5), or no number");
        }
    }

    private void ReadSix(string digits)
    {
        if (digits == "67")
        {
            Degrees.Add(new Degree(7, Seventh));
            Degrees.Add(new Degree(13));
            return;
        }

        Degrees.Add(new Degree(6));
        var slashNine = digits == "6" && cursor.Sees("/9") && !char.IsAsciiDigit(cursor.After(2));
        if (digits == "69" || (slashNine && cursor.Take("/9")))
        {
            Degrees.Add(new Degree(9));
        }
    }

    private SymbolRemark? ReadModifiers()
    {
        int? bracket = null;
        while (true)
        {
            if (ReadSeparators(bracket is not null) is { } badSeparator)
            {
                return badSeparator;
            }

            if (cursor.AtEnd || (cursor.Next == '/' && bracket is null))
            {
                return bracket is { } open ? new SymbolRemark(open, 1, "'(' has no end", "a ')' after it") : null;
            }

            var fault = cursor.Next switch
            {
                '(' => OpenBracket(ref bracket),
                ')' => CloseBracket(ref bracket),
                _ => _items.Read(bracket is not null, WhatMayFollow),
            };
            if (fault is not null)
            {
                return fault;
            }
        }
    }

    private SymbolRemark? ReadSeparators(bool inBrackets)
    {
        if (inBrackets)
        {
            cursor.SkipBlanks();
        }
        else if (ReadBlanks() is { } blank)
        {
            return blank;
        }

        var comma = cursor.Position;
        if (!cursor.Take(','))
        {
            return null;
        }

        cursor.SkipBlanks();
        return comma == _start || cursor.AtEnd || cursor.Next is ',' or ')' or '/'
            ? new SymbolRemark(comma, 1, "',' stands between nothing", "an alteration on either side of it")
            : null;
    }

    private SymbolRemark? OpenBracket(ref int? bracket)
    {
        if (bracket is not null)
        {
            return new SymbolRemark(cursor.Position, 1, "'(' inside brackets", "one pair of brackets at a time");
        }

        bracket = cursor.Position;
        cursor.Take('(');
        cursor.SkipBlanks();
        return cursor.Next == ')' ? new SymbolRemark(cursor.Position, 1, "the brackets are empty", "an alteration such as b9") : null;
    }

    private SymbolRemark? CloseBracket(ref int? bracket)
    {
        if (bracket is null)
        {
            return new SymbolRemark(cursor.Position, 1, "')' closes no bracket", "a '(' before it");
        }

        bracket = null;
        cursor.Take(')');
        _items.EndList();
        return null;
    }
}
