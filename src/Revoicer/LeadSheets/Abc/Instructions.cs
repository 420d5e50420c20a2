using Revoicer.Text;

namespace Revoicer.LeadSheets.Abc;

/// <summary>What is made of fields and directives that are not music.</summary>
internal static class Instructions
{
    // Words about the tune, and text under the notes: they change no note.
    private const string Silent = "ABCDFGHNORSTWZrwEVKXI+";

    /// <summary>How far accidentals hold, where a directive ("%%" or "I:") says so.</summary>
    public static AccidentalReach Reach(string directive, AccidentalReach before) =>
        directive.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries) switch
        {
            ["propagate-accidentals", "not"] => AccidentalReach.Note,
            ["propagate-accidentals", "octave"] => AccidentalReach.Octave,
            ["propagate-accidentals", "pitch"] => AccidentalReach.Pitch,
            _ => before,
        };

    /// <summary>Warns of a field that is not followed and might change what is heard.</summary>
    public static void Unread(char field, Place where, Remarks remarks)
    {
        if (field == 'm')
        {
            remarks.WarnOnce(where, "macros ('m:') are not followed", "the notes written out");
        }
        else if (field == 'U')
        {
            remarks.WarnOnce(where, "letters of one's own ('U:') are passed over", "decorations as !trill!");
        }
        else if (field == 's')
        {
            remarks.WarnOnce(where, "symbol lines ('s:') are passed over", "chord symbols and decorations between the notes");
        }
        else if (!Silent.Contains(field, StringComparison.Ordinal))
        {
            remarks.WarnOnce(where, $"the field '{field}:' is not known and is passed over", "a field of the ABC standard");
        }
    }
}
