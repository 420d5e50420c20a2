using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>Reads decorations. Fermatas and roll marks are kept, all others are passed over: they do not change what is played when.</summary>
internal sealed class Decorations(TuneVoice voice, Remarks remarks)
{
    // Standard 2.1, section 4.14, and the fingerings 0 to 5.
    private static readonly HashSet<string> Known =
    [
        "trill", "trill(", "trill)", "lowermordent", "uppermordent", "mordent", "pralltriller", "roll", "turn", "turnx",
        "invertedturn", "invertedturnx", "arpeggio", ">", "accent", "emphasis", "tenuto", "0", "1", "2", "3", "4", "5", "+",
        "plus", "snap", "slide", "wedge", "upbow", "downbow", "open", "thumb", "breath", "pppp", "ppp", "pp", "p", "mp",
        "mf", "f", "ff", "fff", "ffff", "sfz", "crescendo(", "<(", "crescendo)", "<)", "diminuendo(", ">(", "diminuendo)",
        ">)", "segno", "coda", "shortphrase", "mediumphrase", "longphrase", "editorial", "courtesy", "staccato", "marcato",
        "^", "v", "/", "//", "///", "xstem", "beambr1", "beambr2", "rbstop", "8va(", "8va)",
    ];

    private static readonly HashSet<string> Jumps =
        ["D.S.", "D.C.", "dacoda", "dacapo", "fine", "D.S.alcoda", "D.S.alfine", "D.C.alcoda", "D.C.alfine"];

    // . ~ H L M O P S T u v: the letters that the standard gives a meaning.
    private const string Letters = ".~LMOPSTuv";

    private readonly HashSet<char> _redefined = [];

    /// <summary>"U:" gives a letter another meaning, which is not followed.</summary>
    public void Redefine(char letter) => _redefined.Add(letter);

    /// <summary>Reads the decoration here, or refuses what stands here.</summary>
    public void Read(AbcCursor cursor)
    {
        var from = cursor.At;
        var c = cursor.Here;
        cursor.Skip();
        if (_redefined.Contains(c) || Letters.Contains(c, StringComparison.Ordinal))
        {
            return;
        }

        switch (c)
        {
            case 'H':
                voice.AddFermata();
                break;
            case '!' or '+' when cursor.TextBefore(c) is { } name && CanBeName(name):
                cursor.Skip(name.Length + 1);
                Named(name, cursor.From(from));
                break;
            case '!' or '+' or '#' or '*' or ';' or '?' or '@':
                // '!' alone once forced a line end; the others are kept by the standard for later use.
                remarks.WarnOnce(cursor.From(from), $"'{c}' alone has no meaning and is passed over", "decorations as !fermata!");
                break;
            default:
                remarks.Refuse(cursor.From(from), $"'{Quoted.Text(c.ToString())}' is no music code", "a note, rest, bar line, chord symbol in quotation marks or sign of the ABC standard");
                break;
        }
    }

    // Between two '!' that each force a line end, as they once did, there is music.
    private static bool CanBeName(string name) =>
        !name.Any(c => c is '|' or '[' or ']' or ':' or '"') && (!name.Contains(' ', StringComparison.Ordinal) || IsJump(name));

    private static bool IsJump(string name) => Jumps.Contains(name.Replace(" ", "", StringComparison.Ordinal));

    private void Named(string name, Place where)
    {
        if (name is "fermata" or "invertedfermata")
        {
            voice.AddFermata();
        }
        else if (name == "arpeggio")
        {
            voice.AddRoll();
        }
        else if (IsJump(name))
        {
            remarks.WarnOnce(where, $"'{Quoted.Text(name)}' is not followed: the tune is heard as written, with its repeats", "parts ('P:') or repeats for another order");
        }
        else if (!Known.Contains(name))
        {
            remarks.WarnOnce(where, $"the decoration '{Quoted.Text(name)}' is not known and is passed over", "one of the ABC standard");
        }
    }
}
