namespace Revoicer.Chords;

/// <summary>
/// Reads what stands between the root and the slash: a quality, a number, then any number of modifiers. Methods that
/// can fail return what is wrong, or null.
/// </summary>
internal sealed class SuffixParser(SymbolCursor cursor)
{
    private const string WhatMayFollow = "an alteration such as b9, or sus, add, omit, or a slash and a bass note";

    private readonly int _start = cursor.Position;
    private readonly SuffixItems _items = new(cursor);

    public ChordDegrees Degrees => _items.Degrees;

    public List<SymbolRemark> Warnings => _items.Warnings;

    public SymbolRemark? Read()
    {
        if (ReadBlanks() is { } blank)
        {
            return blank;
        }

        var head = new SuffixHead(cursor, Degrees, Warnings);
        head.ReadQuality();
        return ReadBlanks() ?? head.ReadNumber() ?? ReadModifiers();
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
        var before = cursor.Text[_start..comma].TrimEnd();
        return before.Length == 0 || before.EndsWith('(') || cursor.AtEnd || cursor.Next is ',' or ')' or '/'
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
