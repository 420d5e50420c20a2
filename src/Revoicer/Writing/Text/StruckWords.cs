using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Playing;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Writing.Text;

/// <summary>Says of one chord what is struck, when and by which limb, and what rings on without a stroke.</summary>
internal sealed class StruckWords(Arrangement arrangement)
{
    private readonly KeySpelling _notes = new(arrangement.WrittenKey);
    private readonly PlaceNames _places = new(arrangement);

    /// <summary>All of it, in sentences.</summary>
    public string Of(Choice choice) => Strokes(choice) + LeadsOn(choice) + RingsOn(choice);

    /// <summary>What is struck, with limbs and times: "Together, on the beat: ...".</summary>
    public string Strokes(Choice choice)
    {
        if (choice.Strokes.Count == 0)
        {
            return "No bell is struck for this chord.";
        }

        if (choice.Strokes is [var single])
        {
            return $"Struck alone: {Bell(choice, single)} {When(choice, single)}.";
        }

        var figure = Sentences.Capital(choice.Figure) + (choice.Figure == FigureNames.Of(Figure.InTenths) ? " under the tune" : "");
        return choice.Strokes.All(s => s.Beat == choice.Start && s.Lead == Seconds.Zero)
            ? $"{figure}, on the beat: {Sentences.List([.. choice.Strokes.Select(s => Bell(choice, s))])}."
            : $"{figure}: {string.Join(", ", choice.Strokes.OrderBy(s => s.At).ThenBy(s => s.Note).Select(s => $"{Bell(choice, s)} {When(choice, s)}"))}.";
    }

    // A bass that comes after everything else and lies a step beside the next one.
    private string LeadsOn(Choice choice)
    {
        var last = choice.Strokes.OrderBy(s => s.At).ThenBy(s => s.Note).LastOrDefault();
        var next = arrangement.Choices.FirstOrDefault(c => c.Start == choice.Start + choice.Length)?.Strokes.FirstOrDefault(s => s.IsPedal);
        return last is not null && next is not null && last.IsPedal && last.Beat > choice.Start
            && choice.Figure is not ("in tenths" or "as it was") && (next.Note - last.Note).Size.Semitones is 1 or 2
                ? $" {_notes.Of(last.Note, choice.ToneNames)} leads by step into the next bass."
                : "";
    }

    private string Bell(Choice choice, Stroke stroke)
    {
        var touch = stroke.Level.Value switch
        {
            0 => "",
            > 0 and var louder => string.Create(CultureInfo.InvariantCulture, $", {louder:0.#} dB louder"),
            var softer => string.Create(CultureInfo.InvariantCulture, $", {-softer:0.#} dB softer"),
        };
        return $"{_notes.Of(stroke.Note, choice.ToneNames)} ({LimbNames.Of(stroke.Limb)}{touch})";
    }

    private string When(Choice choice, Stroke stroke)
    {
        var meter = _places.BarAt(choice.Start).Meter;
        var beat = choice.Beat + ((stroke.Beat - choice.Start).Quarters / meter.Beat.Quarters);
        var isBefore = stroke.Lead > Seconds.Zero;
        var target = stroke.Beat == choice.Start
            ? isBefore ? "the beat" : "on the beat"
            : string.Create(CultureInfo.InvariantCulture, $"{(isBefore ? "" : "on ")}beat {beat:0.##}");
        return isBefore ? string.Create(CultureInfo.InvariantCulture, $"{stroke.Lead} before {target}") : target;
    }

    private static string RingsOn(Choice choice) => choice.LeftRinging.Count == 0
        ? ""
        : $" {Sentences.List([.. choice.LeftRinging.Select(n => n.ToString())])} {(choice.LeftRinging.Count == 1 ? "rings" : "ring")} on from the chord before.";
}
