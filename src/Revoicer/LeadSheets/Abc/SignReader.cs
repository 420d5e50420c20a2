using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads bar lines, endings, tuplets.</summary>
internal sealed class SignReader(TuneVoice voice, Remarks remarks)
{
    // A bracket that says more often than this is a slip of the finger.
    private const int MostTimes = 32;

    // Up to nine notes the standard says in whose time they are played (2.1, section 4.13); of more the tune has to.
    private const int MostByItself = 9;
    private const int MostInTuplet = 64;

    /// <summary>Whether a bar line stands here: '|' or ':', or "[|".</summary>
    public static bool IsBarLine(AbcCursor cursor) => cursor.Here is '|' or ':' || (cursor.Here == '[' && cursor.Next == '|');

    /// <summary>Reads a bar line and the ending right behind it, as in "|1".</summary>
    public void ReadBarLine(AbcCursor cursor)
    {
        var from = cursor.At;
        var closes = cursor.TakeAll(':');
        var lines = 0;
        var opens = 0;
        var isThick = false;
        while (IsBarLine(cursor) || (lines > 0 && cursor.Here == ']'))
        {
            opens = cursor.TakeAll(':');
            isThick |= cursor.Here is '[' or ']';
            lines += cursor.Here == '|' ? 1 : 0;
            if (opens == 0)
            {
                cursor.Skip();
            }
        }

        var where = cursor.From(from);
        if (lines == 0)
        {
            (closes, opens) = (closes / 2, closes / 2);
            if (closes == 0)
            {
                remarks.Refuse(where, "':' that belongs to no bar line", "'|:', ':|' or '::'");
            }
        }

        var isRepeat = closes > 0 || opens > 0;
        voice.EndBar(new ReadBarLine(where, closes, opens, isRepeat || isThick || lines > 1));
        if (char.IsAsciiDigit(cursor.Here))
        {
            ReadEnding(cursor);
        }
    }

    /// <summary>Reads the numbers of an ending: "1", "1,3", "1-3".</summary>
    public void ReadEnding(AbcCursor cursor)
    {
        var from = cursor.At;
        var numbers = new SortedSet<int>();
        var isSound = true;
        do
        {
            var first = cursor.TakeNumber() ?? 0;
            var last = cursor.Here == '-' && char.IsAsciiDigit(cursor.Next) ? TakeLast(cursor) : first;
            isSound &= first is >= 1 and <= MostTimes && last >= first && last <= MostTimes;
            numbers.UnionWith(isSound ? Enumerable.Range(first, last - first + 1) : []);
        }
        while (cursor.Here == ',' && char.IsAsciiDigit(cursor.Next) && cursor.Take(','));

        if (!isSound)
        {
            remarks.Refuse(cursor.From(from), $"'{Quoted.Text(cursor.TextFrom(from))}' numbers no ending", $"such as 1 or 1,3 or 1-3, up to {MostTimes}");
            return;
        }

        voice.BeginEnding([.. numbers], cursor.From(from));
    }

    /// <summary>Reads "(3", "(3:2", "(3:2:4"; a bracket without number begins a slur and is passed over.</summary>
    public void ReadTupletOrSlur(AbcCursor cursor)
    {
        var from = cursor.At;
        cursor.Skip();
        if (cursor.TakeNumber() is not { } p)
        {
            TakeSide(cursor);
            return;
        }

        int? q = null;
        int? notes = null;
        if (cursor.Here == ':')
        {
            cursor.Skip();
            q = cursor.TakeNumber();
            notes = cursor.Take(':') ? cursor.TakeNumber() : null;
        }

        if (p < 2 || p > (q is null ? MostByItself : MostInTuplet) || q is < 1 or > MostInTuplet || notes is < 1 or > MostInTuplet)
        {
            remarks.Refuse(cursor.From(from), $"'{Quoted.Text(cursor.TextFrom(from))}' is no tuplet", "'(p' with p from 2 to 9, or '(p:q:r' with numbers up to 64");
            return;
        }

        voice.BeginTuplet(p, q, notes, cursor.From(from));
    }

    /// <summary>Takes the mark behind a slur or tie that says on which side it is drawn: ' above, a comma below.</summary>
    public static void TakeSide(AbcCursor cursor)
    {
        if (cursor.Here is '\'' or ',')
        {
            cursor.Skip();
        }
    }

    private static int TakeLast(AbcCursor cursor)
    {
        cursor.Skip();
        return cursor.TakeNumber() ?? 0;
    }
}
