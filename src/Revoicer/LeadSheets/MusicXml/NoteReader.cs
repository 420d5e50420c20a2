using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads notes: how long, which voice, which pitch.</summary>
/// <param name="places">Where elements stand.</param>
/// <param name="remarks">Takes problems.</param>
internal sealed class NoteReader(XmlPlaces places, Remarks remarks)
{
    private const int MostAltered = 3;

    private static readonly string[] Types =
        ["maxima", "long", "breve", "whole", "half", "quarter", "eighth", "16th", "32nd", "64th", "128th", "256th", "512th", "1024th"];

    private static readonly Beats Maxima = Beats.OfQuarters(32);
    private static readonly Beats LongestNote = Beats.OfQuarters(1000);

    private readonly HashSet<WrittenNote> _tied = [];

    /// <summary>The voice of a note; where none is named, one for each staff.</summary>
    public static string VoiceOf(XElement note) => note.ChildText("voice") is { Length: > 0 } voice ? voice : StaffOf(note) == "1" ? "1" : $"staff {StaffOf(note)}";

    /// <summary>The staff of a note.</summary>
    public static string StaffOf(XElement note) => note.ChildText("staff") is { Length: > 0 } staff ? staff : "1";

    /// <summary>What the duration of an element says; null where there is none that can be read.</summary>
    public static Beats? Duration(XElement element, Beats divisions) =>
        Elements.Fraction(element.ChildText("duration")) is { } duration && duration >= Beats.Zero ? Over(duration, divisions) : null;

    /// <summary>A number of parts of a quarter.</summary>
    public static Beats Over(Beats parts, Beats divisions) => parts * divisions.Denominator / divisions.Numerator;

    /// <summary>How long a note or rest lasts: its duration, else its written value, for the rest of a bar the metre; null where none can be read, which is told.</summary>
    public Beats? Length(XElement note, Beats divisions, Meter? meter)
    {
        var length = Duration(note, divisions)
            ?? Value(note)
            ?? (note.Child("rest") is { } rest && (rest.Text("measure") == "yes" || !note.Has("type")) ? meter?.Bar : null);
        if (length is { } found && found > Beats.Zero && found <= LongestNote)
        {
            return found;
        }

        remarks.Refuse(places.Of(note), "a note that has no length that can be read", "duration, a number above 0");
        return null;
    }

    /// <summary>The note of the tune; null for a rest or a note without pitch.</summary>
    public TuneNote? Pitched(XElement note, Beats start, Beats length, AttributesReader attributes)
    {
        if (note.Child("pitch") is not { } pitch)
        {
            return null;
        }

        var alter = pitch.Has("alter") ? Elements.Fraction(pitch.ChildText("alter")) : Beats.Zero;
        if (pitch.ChildText("step") is not { Length: 1 } step || step[0] is < 'A' or > 'G'
            || Elements.Whole(pitch.ChildText("octave")) is not ({ } octave and >= -1 and <= 10)
            || alter is not { } alteration || Math.Abs(alteration.Quarters) > MostAltered)
        {
            remarks.Refuse(places.Of(pitch), "a pitch that cannot be read", "a step from A to G, an octave 0 to 9, perhaps an alter from -3 to 3");
            return null;
        }

        if (alteration.Denominator != 1)
        {
            remarks.Refuse(places.Of(pitch), $"an alteration of {pitch.ChildText("alter")} semitones", "a whole number; no bell lies between two semitones");
            return null;
        }

        var written = new NoteName(Enum.Parse<Letter>(step), (int)alteration.Numerator);
        var midi = (12 * (octave + 1)) + new NoteName(written.Letter).PitchClass.Value + written.Alteration + attributes.TransposedSemitones;
        if (midi is < 0 or > 127)
        {
            remarks.Refuse(places.Of(pitch), "a note outside the range of MIDI", "a note from C-1 to G9");
            return null;
        }

        return new TuneNote(start, length, written.Moved(attributes.TransposedFifths), WrittenNote.AtMidi(midi), HasTie(note, "start"))
        {
            IsRolled = note.Children("notations").Any(n => n.Has("arpeggiate")),
            TieEnd = HasTie(note, "stop") ? TieEnd.Paired : TieEnd.None,
        };
    }

    /// <summary>The next note of the tune with what is known of its tie: one that ends at it and began at none before it has one end.</summary>
    public TuneNote WithTie(TuneNote note)
    {
        var began = _tied.Remove(note.Note);
        if (note.IsTiedOn)
        {
            _tied.Add(note.Note);
        }

        return note.TieEnd == TieEnd.Paired && !began ? note with { TieEnd = TieEnd.OneEnded } : note;
    }

    private static bool HasTie(XElement note, string type) =>
        (note.Has("tie") ? note.Children("tie") : note.Children("notations").Elements().Where(e => e.Name.LocalName == "tied")).Any(t => t.Text("type") == type);

    private static Beats? Value(XElement note)
    {
        var place = Array.IndexOf(Types, note.ChildText("type"));
        if (place < 0)
        {
            return null;
        }

        var value = Maxima / (1 << place);
        var dots = Math.Min(4, note.Children("dot").Count());
        value = value * ((2 << dots) - 1) / (1 << dots);
        var tuplet = note.Child("time-modification");
        return tuplet is not null
            && Elements.Whole(tuplet.ChildText("actual-notes")) is >= 1 and <= 999 and var actual
            && Elements.Whole(tuplet.ChildText("normal-notes")) is >= 1 and <= 999 and var normal
                ? value * normal / actual
                : value;
    }
}
