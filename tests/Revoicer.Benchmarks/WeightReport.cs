using System.Globalization;
using System.Text.RegularExpressions;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Text;

namespace Revoicer.Benchmarks;

/// <summary>
/// Prints, as a table for docs/sounds.md, what each word of the balanced sound does on one sheet: the draft with that word
/// alone changed beside the draft as shipped.
/// </summary>
internal static partial class WeightReport
{
    public static int Print(string file)
    {
        if (SheetFiles.Read(file) is not { } sheet)
        {
            return 2;
        }

        var text = ShippedSounds.Text("balanced");
        var shipped = Draft(sheet, text);
        Console.WriteLine("| word | from | to | clash | carry | brightness | strokes | rolls | chords otherwise |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|");
        Console.WriteLine($"| as shipped | | | {Figures(shipped)} | |");
        foreach (var (word, from, to, changed) in Changes(text))
        {
            var draft = Draft(sheet, changed);
            var otherwise = draft.Choices.Zip(shipped.Choices).Count(c => !Shape(c.First).SequenceEqual(Shape(c.Second)));
            Console.WriteLine($"| `{word}` | {from} | {to} | {Figures(draft)} | {otherwise} of {draft.Choices.Count} |");
        }

        return 0;
    }

    // A price that keeps something from happening is taken away, any other number doubled, or set to what makes sense where
    // that would be out of range or nothing.
    private static IEnumerable<(string Word, string From, string To, string Changed)> Changes(string text)
    {
        var part = "";
        foreach (var line in text.Split('\n'))
        {
            if (line.StartsWith('['))
            {
                part = line[..(line.IndexOf(']') + 1)];
            }
            else if (Setting().Match(line) is { Success: true } found)
            {
                var (word, from) = (found.Groups[1].Value, found.Groups[2].Value);
                var to = Changed(word, double.Parse(from, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture);
                var at = text.IndexOf(part, StringComparison.Ordinal);
                var line0 = text.IndexOf(line, at, StringComparison.Ordinal);
                yield return ($"{part.Trim('[', ']')}.{word}", from, to, text[..line0] + $"{word} = {to}" + text[(line0 + line.Length)..]);
            }
        }
    }

    private static double Changed(string word, double value) => word switch
    {
        "root" or "third" or "seventh" or "fifth" or "colour" or "other" or "weak-beat" or "none" or "height" or "leap" => 0,
        "bass-first" or "afterbeats" or "broken" or "in-tenths" or "change" or "gap" => 0,
        "strong-beats" => 0,
        "one-figure" => 0.7,
        "at-least" => 3,
        "roll-step" => 0.09,
        "shortfall" when value == 0 => 2,
        _ => 2 * value,
    };

    private static string Figures(Arrangement draft) => string.Create(
        CultureInfo.InvariantCulture,
        $"{draft.Totals.ClashDose:0} | {draft.Totals.Carry} | {draft.Totals.Brightness} | {draft.Strokes.Count(s => !s.IsTune)} | {draft.Choices.Count(c => c.Figure == "rolled")}");

    private static IEnumerable<(int, string)> Shape(Choice choice) => choice.Strokes.Select(s => (s.Note.Midi, choice.Figure));

    private static Arrangement Draft(LeadSheet sheet, string sound)
    {
        var read = (Reading<Sound>.Accepted)SoundFile.Read("changed.toml", sound);
        return ((Drafting.Made)Revoicing.Draft(sheet, ShippedTowers.Default, read.Value, DraftWish.None, null, CancellationToken.None)).Arrangement;
    }

    [GeneratedRegex(@"^([a-z-]+) = (-?[0-9.]+)\b")]
    private static partial Regex Setting();
}
