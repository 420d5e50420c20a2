using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads divisions, key, metre and transposition as they change through a part.</summary>
/// <param name="places">Where elements stand.</param>
/// <param name="remarks">Takes problems and warnings.</param>
internal sealed class AttributesReader(XmlPlaces places, Remarks remarks)
{
    private const int MostFifths = 7;
    private const int MostUpper = 255;
    private static readonly Beats FinestDivisions = Beats.OfQuarters(1_000_000);

    /// <summary>Parts of a quarter in which durations are counted.</summary>
    public Beats Divisions { get; private set; } = Beats.OfQuarters(1);

    /// <summary>The metre; null for free metre.</summary>
    public Meter? Meter { get; private set; } = new Meter(4, 4);

    /// <summary>Whether any metre has been given.</summary>
    public bool HasMeter { get; private set; }

    /// <summary>The key, moved to what is heard; null before any.</summary>
    public ReadKey? Key { get; private set; }

    /// <summary>Steps on the line of fifths from the written to the heard name.</summary>
    public int TransposedFifths { get; private set; }

    /// <summary>Semitones from the written to the heard note, within an octave; whole octaves stay as written.</summary>
    public int TransposedSemitones { get; private set; }

    /// <summary>Takes an attributes element.</summary>
    public void Take(XElement attributes)
    {
        if (attributes.Child("divisions") is { } divisions)
        {
            TakeDivisions(divisions);
        }

        if (OfFirstStaff(attributes, "transpose") is { } transpose)
        {
            TakeTranspose(transpose);
        }

        if (OfFirstStaff(attributes, "key") is { } key)
        {
            TakeKey(key);
        }

        if (OfFirstStaff(attributes, "time") is { } time)
        {
            HasMeter = true;
            TakeTime(time);
        }
    }

    private static XElement? OfFirstStaff(XElement attributes, string name) =>
        attributes.Children(name).FirstOrDefault(e => e.Text("number") is null or "1");

    private void TakeDivisions(XElement element)
    {
        if (Elements.Fraction(element.Value.Trim()) is { } divisions && divisions > Beats.Zero && divisions <= FinestDivisions)
        {
            Divisions = divisions;
        }
        else
        {
            remarks.Refuse(places.Of(element), $"'{Quoted.Text(element.Value)}' are no divisions of a quarter", "a number above 0, at most 1000000");
        }
    }

    // An octave more or less is left as it is written: a draft chooses the octave itself.
    private void TakeTranspose(XElement element)
    {
        const int octave = 12;
        const int lettersInOctave = 7;
        if (Elements.Whole(element.ChildText("chromatic")) is not { } semitones || Math.Abs(semitones) > 127)
        {
            remarks.Refuse(places.Of(element), "a transposition without semitones", "chromatic, a whole number");
            return;
        }

        var letters = Elements.Whole(element.ChildText("diatonic")) ?? (int)Math.Round(semitones * lettersInOctave / (double)octave);
        var octaves = (int)Math.Floor(semitones / (double)octave);
        var name = new NoteName(Letter.C).Above(((letters % lettersInOctave) + lettersInOctave) % lettersInOctave, semitones - (octaves * octave));
        if (Math.Abs(name.Alteration) > 2)
        {
            name = NoteName.AtFifths(((((7 * semitones) % octave) + octave + 5) % octave) - 5);
        }

        TransposedFifths = name.FifthsFromC;
        TransposedSemitones = semitones % octave;
    }

    private void TakeKey(XElement element)
    {
        if (element.ChildText("fifths") is not { } text)
        {
            remarks.WarnOnce(places.Of(element), "a key signature of its own making is passed over", "fifths; the notes say what is played");
            Key = new ReadKey(null, 0);
            return;
        }

        if (Elements.Whole(text) is not { } written || Math.Abs(written) > 30)
        {
            remarks.Refuse(places.Of(element), $"'{Quoted.Text(text)}' is no key signature", "fifths, -7 to 7");
            return;
        }

        var fifths = written + TransposedFifths;
        if (Math.Abs(written) > MostFifths)
        {
            remarks.WarnOnce(places.Of(element), $"a signature of {Math.Abs(written)} accidentals is passed over", "at most seven; the notes say what is played");
            Key = new ReadKey(null, 0);
            return;
        }

        fifths = fifths > MostFifths ? fifths - 12 : fifths < -MostFifths ? fifths + 12 : fifths;
        var mode = ModeOf(element.ChildText("mode"));
        var above = -new KeySignature(new NoteName(Letter.C), mode).Fifths;
        Key = new ReadKey(new KeySignature(NoteName.AtFifths(fifths + above), mode), fifths);
    }

    private static Mode ModeOf(string? word) => word?.ToLowerInvariant() switch
    {
        "minor" or "aeolian" => Mode.Minor,
        "dorian" => Mode.Dorian,
        "phrygian" => Mode.Phrygian,
        "lydian" => Mode.Lydian,
        "mixolydian" => Mode.Mixolydian,
        "locrian" => Mode.Locrian,
        _ => Mode.Major,
    };

    // Several fractions side by side make one bar, counted in the finest of their values.
    private void TakeTime(XElement element)
    {
        if (element.Has("senza-misura"))
        {
            Meter = null;
            return;
        }

        var uppers = element.Children("beats").Select(b => Sum(b.Value)).ToArray();
        var lowers = element.Children("beat-type").Select(b => Elements.Whole(b.Value.Trim())).ToArray();
        var isRead = uppers.Length > 0 && uppers.Length == lowers.Length && uppers.All(u => u is >= 1 and <= MostUpper) && lowers.All(l => l is 1 or 2 or 4 or 8 or 16 or 32 or 64);
        var lower = isRead ? lowers.Max()!.Value : 0;
        var upper = isRead ? uppers.Zip(lowers, (u, l) => u!.Value * lower / l!.Value).Sum() : 0;
        if (isRead && upper <= MostUpper)
        {
            Meter = new Meter(upper, lower);
        }
        else
        {
            remarks.Refuse(places.Of(element), "a time signature that cannot be read", "beats 1 to 255 and beat-type 1, 2, 4, 8, 16, 32 or 64");
        }
    }

    private static int? Sum(string beats)
    {
        var parts = beats.Split('+').Select(p => Elements.Whole(p.Trim())).ToArray();
        return parts.Length <= 32 && parts.All(p => p is >= 1 and <= MostUpper) ? parts.Sum() : null;
    }
}
