using System.Xml.Linq;
using Revoicer.Chords;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads harmony elements: root, kind, degrees, bass. What the degrees say holds, whatever the text beside them says.</summary>
/// <param name="places">Where elements stand.</param>
/// <param name="remarks">Takes problems and warnings.</param>
internal sealed class HarmonyReader(XmlPlaces places, Remarks remarks)
{
    // Degrees a chord may have, and how far they may be altered; beyond that nobody writes.
    private const int HighestDegree = 13;
    private const int MostAltered = 2;
    private const int MostDegrees = 20;

    /// <summary>Reads one element.</summary>
    /// <returns>False where it is passed over; the symbol is null for "no chord".</returns>
    public bool Read(XElement harmony, out ChordSymbol? symbol)
    {
        symbol = null;
        var kind = harmony.Child("kind");
        var word = kind?.Value.Trim() ?? "";
        if (word == "none")
        {
            return true;
        }

        if (harmony.Child("root") is not { } root || Name(root, "root") is not { } name)
        {
            remarks.WarnOnce(places.Of(harmony), "a chord without a root from A to G is passed over", "a root; numerals and functions are not read");
            return false;
        }

        var found = ChordKind.All.FirstOrDefault(k => k.Name == word);
        var text = kind?.Text("text") ?? "";
        if (found is null or { Degrees.Count: 0 })
        {
            return ByText(harmony, name, word, text, out symbol);
        }

        if (Changed(found.Degrees, harmony) is not { } degrees)
        {
            return false;
        }

        var tones = ChordTones.Of(name, degrees);
        symbol = new ChordSymbol(name, ChordSuffix.Of(degrees, text), tones, Bass(harmony, name, tones));
        return true;
    }

    // A kind that is not told by degrees: its degrees alone, or its text if that is a symbol; else nothing can be played.
    private bool ByText(XElement harmony, NoteName root, string kind, string text, out ChordSymbol? symbol)
    {
        symbol = null;
        if (harmony.Has("degree") && Changed([new Degree(1)], harmony) is { } degrees)
        {
            var tones = ChordTones.Of(root, degrees);
            symbol = new ChordSymbol(root, ChordSuffix.Of(degrees, text), tones, Bass(harmony, root, tones));
        }
        else if (text.Length > 0 && SymbolParser.Parse(root + text) is { Symbol: { } parsed } read && parsed.Root == root)
        {
            symbol = parsed with { Bass = parsed.Bass ?? Bass(harmony, root, parsed.Tones) };
            foreach (var remark in read.Warnings)
            {
                remarks.WarnOnce(places.Of(harmony), $"{remark.Found} in '{Quoted.Text(root + text)}'", remark.Expected);
            }
        }
        else
        {
            remarks.Warn(places.Of(harmony), $"the kind '{Quoted.Text(kind)}' on {root} names no tones; no chord is played there", "a kind with tones, or degrees");
        }

        return true;
    }

    private List<Degree>? Changed(IEnumerable<Degree> kind, XElement harmony)
    {
        var degrees = kind.ToList();
        foreach (var element in harmony.Children("degree").Take(MostDegrees))
        {
            if (Change(element) is not { } change)
            {
                remarks.Refuse(places.Of(element), "a degree that cannot be read", "degree-value 1 to 13, degree-alter -2 to 2, degree-type add, alter or subtract");
                return null;
            }

            if (!change.ApplyTo(degrees))
            {
                remarks.Warn(places.Of(element), $"the chord has no degree {change.Number} to {change.Type.ToString().ToLowerInvariant()}", "a degree of its kind");
            }
        }

        if (!degrees.Contains(new Degree(1)))
        {
            degrees.Add(new Degree(1));
        }

        return degrees;
    }

    private static DegreeChange? Change(XElement degree)
    {
        var number = Elements.Whole(degree.ChildText("degree-value"));
        var alteration = degree.Has("degree-alter") ? Elements.Whole(degree.ChildText("degree-alter")) : 0;
        DegreeChangeType? type = degree.ChildText("degree-type") switch
        {
            "add" => DegreeChangeType.Add,
            "alter" => DegreeChangeType.Alter,
            "subtract" => DegreeChangeType.Subtract,
            _ => null,
        };
        return number is >= 1 and <= HighestDegree && alteration is >= -MostAltered and <= MostAltered && type is { } known
            ? new DegreeChange(known, number.Value, alteration.Value)
            : null;
    }

    private static NoteName? Bass(XElement harmony, NoteName root, Items<ChordTone> tones)
    {
        if (harmony.Child("bass") is { } bass && Name(bass, "bass") is { } name)
        {
            return name == root ? null : name;
        }

        return Elements.Whole(harmony.ChildText("inversion")) is >= 1 and var inversion && inversion < tones.Count ? tones[inversion].Name : null;
    }

    private static NoteName? Name(XElement of, string prefix)
    {
        var alter = of.Has(prefix + "-alter") ? Elements.Whole(of.ChildText(prefix + "-alter")) : 0;
        return of.ChildText(prefix + "-step") is { Length: 1 } step && step[0] is >= 'A' and <= 'G' && alter is >= -MostAltered and <= MostAltered
            ? new NoteName(Enum.Parse<Letter>(step), alter.Value)
            : null;
    }
}
