using System.Globalization;
using Revoicer.Text;

namespace Revoicer.Chords;

/// <summary>Reads one modifier of a suffix after another: alterations, added, omitted and suspended tones.</summary>
internal sealed class SuffixItems(SymbolCursor cursor)
{
    private const string Degree2To13 = "a degree from 2 to 13";
    private const string Alterations = "b5, #5, b6, b9, #9, #11 or b13";

    private readonly string _root = cursor.Text[..cursor.Position];
    private bool _adding;

    public ChordDegrees Degrees { get; } = new();

    public List<SymbolRemark> Warnings { get; } = [];

    /// <summary>Ends what "add" began inside brackets.</summary>
    public void EndList() => _adding = false;

    public SymbolRemark? Read(bool inBrackets, string whatMayFollow)
    {
        var from = cursor.Position;
        if (cursor.TakeWord(SuffixWords.Modifiers, out var modifier))
        {
            _adding = modifier == Modifier.Add && inBrackets;
            cursor.SkipBlanks();
            return ReadWord(modifier, from);
        }

        if (_adding)
        {
            return ReadAdded(from);
        }

        return cursor.Next switch
        {
            'b' or '#' or '+' or '-' => ReadAlteration(),
            SymbolCursor.Natural => new SymbolRemark(from, 1, "a natural sign before a degree says nothing", "the degree alone"),
            >= '0' and <= '9' when inBrackets => ReadNumberInBrackets(),
            var next when !Quoted.IsVisible(next) => cursor.Unread(from, "cannot be read", "'#' or 'b' in place of a sign that only one font has"),
            _ => cursor.Unread(from, "cannot be read", whatMayFollow),
        };
    }

    private SymbolRemark? ReadWord(Modifier modifier, int from)
    {
        switch (modifier)
        {
            case Modifier.Suspend:
                return ReadSuspended(from);
            case Modifier.Add:
                return ReadAdded(from);
            case Modifier.Omit:
                return ReadOmitted();
            case Modifier.Alter:
                return ReadAltered(from);
            case Modifier.RaiseFifth:
                cursor.Take('5');
                Degrees.Alter(new Degree(5, 1));
                return null;
            case Modifier.LowerFifth when cursor.Take('5'):
                Degrees.Alter(new Degree(5, -1));
                return null;
            case Modifier.LowerFifth:
                return cursor.Unread(from, "stands after a number", "'dim7' next to the root, or 'b5'");
            default:
                return ReadMajorSeventh(from, modifier == Modifier.MajorSeventhSign);
        }
    }

    private SymbolRemark? ReadSuspended(int from)
    {
        switch (cursor.TakeDigits())
        {
            case "" or "4":
                Degrees.Suspend(4);
                return null;
            case "2":
                Degrees.Suspend(2);
                return null;
            case "24" or "42":
                Degrees.Suspend(2, 4);
                return null;
            default:
                cursor.GoTo(from);
                return cursor.Unread(from, "can mean several chords", "'sus2', 'sus4', or a number before it as in '9sus4'");
        }
    }

    private SymbolRemark? ReadOmitted()
    {
        var from = cursor.Position;
        var digits = cursor.TakeDigits();
        if (digits is not ("3" or "5" or "7" or "9" or "11"))
        {
            return cursor.Missing(from, digits, "3, 5, 7, 9 or 11, the tone to leave out");
        }

        return Degrees.Omit(Number(digits))
            ? null
            : new SymbolRemark(from, digits.Length, $"the chord has no {digits} to leave out", "a tone of the chord");
    }

    // 'alt' asks for altered fifth and ninth and leaves open which: this is the choice of docs/chord-symbols.md.
    private SymbolRemark? ReadAltered(int from)
    {
        if (!Degrees.HasSeventh)
        {
            Degrees.Add(new Degree(7, -1));
            cursor.Take('7');
        }

        Degrees.Alter(new Degree(5, 1));
        Degrees.Alter(new Degree(9, 1));
        Warnings.Add(new SymbolRemark(from, cursor.Position - from, "'alt' does not say which tones are altered; taken as #5 and #9 with a seventh", "the alterations by name, such as 7#5#9"));
        return null;
    }

    private SymbolRemark? ReadMajorSeventh(int from, bool isSign)
    {
        var digits = cursor.TakeDigits();
        if (digits is not ("7" or "9" or "11" or "13") && !(isSign && digits.Length == 0))
        {
            cursor.GoTo(from);
            return cursor.Unread(from, "cannot be read", "'maj7', 'maj9', 'maj11' or 'maj13'");
        }

        // Only the diminished seventh leaves room for a major seventh above it.
        if (Degrees.Has(new Degree(7)) || Degrees.Has(new Degree(7, -1)))
        {
            return cursor.Unread(from, "is a second seventh", "one seventh");
        }

        Degrees.Stack(isSign && digits.Length == 0 ? 7 : Number(digits), 0);
        return null;
    }

    private SymbolRemark? ReadNumberInBrackets()
    {
        var from = cursor.Position;
        if (Degrees.HasSixthOrSeventh)
        {
            return ReadAdded(from);
        }

        var digits = cursor.TakeDigits();
        return new SymbolRemark(from, digits.Length, $"'{Quoted.Text(digits)}' in brackets can be part of the chord or an alternative", "the number without brackets, or 'add' before it");
    }

    private SymbolRemark? ReadAdded(int from)
    {
        var start = cursor.Position;
        if (cursor.TakeWord(SuffixWords.Major, out var major))
        {
            return ReadMajorSeventh(start, major == Modifier.MajorSeventhSign);
        }

        var sign = TakeSign();
        var at = cursor.Position;
        var digits = cursor.TakeDigits();
        if (digits.Length == 0 || !IsDegree(digits))
        {
            return cursor.Missing(at, digits, Degree2To13);
        }

        if (AddedDegree(sign, Number(digits)) is not { } degree)
        {
            return new SymbolRemark(start, cursor.Position - start, $"'{Quoted.Text(SignText(sign) + digits)}' cannot be added", "2, 4, 6, 9, 11, 13, b9, #9, #11 or b13");
        }

        Degrees.Add(degree);
        return null;
    }

    private Degree? AddedDegree(int sign, int number) => (sign, number) switch
    {
        (0, 2) => new Degree(9),
        (0, 6) => new Degree(Degrees.HasSeventh ? 13 : 6),
        (0, 3 or 4 or 9 or 11 or 13) => new Degree(number),
        (1, 4) => new Degree(11, 1),
        (-1, 2) => new Degree(9, -1),
        (-1, 6 or 9 or 13) or (1, 9 or 11) => new Degree(number, sign),
        _ => null,
    };

    private SymbolRemark? ReadAlteration()
    {
        var from = cursor.Position;
        var written = cursor.Next;
        var sign = TakeSign();
        var at = cursor.Position;
        var digits = cursor.TakeDigits();
        if (written == '+' && digits.Length == 0)
        {
            Degrees.Alter(new Degree(5, 1));
            return null;
        }

        if (digits.Length == 0 || !IsDegree(digits))
        {
            return cursor.Missing(at, digits, Degree2To13);
        }

        return (sign, Number(digits)) switch
        {
            (1, 7) when written == '#' && Degrees.HasMinorThird && !Degrees.HasSeventh => Put(new Degree(7)),
            (-1 or 1, 5) when Degrees.IsOpenFifth => new SymbolRemark(
                from, cursor.Position - from, $"'{Quoted.Text(cursor.Text[from..cursor.Position])}' alters the fifth that '5' asks for", $"'{Quoted.Text(_root)}({(sign > 0 ? '#' : 'b')}5)' for the triad, or '{Quoted.Text(_root)}5' for root and fifth"),
            (-1 or 1, 5) => Put(new Degree(5, sign)),
            (-1, 6) => Put(new Degree(6, -1)),
            (1, 4 or 11) => PutHigh(from, written, new Degree(11, 1)),
            (-1 or 1, 9) => PutHigh(from, written, new Degree(9, sign)),
            (-1, 13) => PutHigh(from, written, new Degree(13, -1)),
            _ => cursor.Unread(from, "is no alteration of a chord", Alterations),
        };
    }

    private SymbolRemark? Put(Degree degree)
    {
        Degrees.Alter(degree);
        return null;
    }

    private SymbolRemark? PutHigh(int from, char written, Degree degree)
    {
        var length = cursor.Position - from;
        if (!Degrees.HasSixthOrSeventh)
        {
            return new SymbolRemark(from, length, $"'{degree}' stands on a chord without a seventh", $"'7{degree}' or 'add{degree}'");
        }

        if (written is '+' or '-')
        {
            Warnings.Add(new SymbolRemark(from, length, $"'{written}' before a degree is taken as '{degree}'", $"'{degree}'"));
        }

        return Put(degree);
    }

    private int TakeSign() =>
        cursor.Take('#') || cursor.Take('+') ? 1 : cursor.Take('b') || cursor.Take('-') ? -1 : 0;

    private static string SignText(int sign) => sign switch { 1 => "#", -1 => "b", _ => "" };

    private static bool IsDegree(string digits) => digits.Length <= 2 && Number(digits) is >= 2 and <= 13;

    private static int Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);
}
