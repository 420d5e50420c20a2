using System.Globalization;
using Revoicer.Playing;

namespace Revoicer.Writing.Text;

/// <summary>How tiring the heavy strokes are, in a sentence for the player.</summary>
internal static class FatigueText
{
    /// <summary>"light: ...", "tiring: ...", "too much: ...", with the figures behind it.</summary>
    public static string Of(Fatigue fatigue, PlaceNames places)
    {
        var word = fatigue.Level > fatigue.TooMuch ? "too much"
            : fatigue.Level > fatigue.Tires || fatigue.Row > fatigue.RowTires ? "tiring"
            : "light";
        var level = string.Create(
            CultureInfo.InvariantCulture,
            $"the level of heavy strokes rises to {fatigue.Level:0.0} in {places.BarOf(fatigue.LevelAt)}, where {fatigue.Tires:0.#} tires and {fatigue.TooMuch:0.#} is too much");
        return fatigue.Row == 0
            ? $"{word}: {level}"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{word}: {level}; one foot has {Sentences.Count(fatigue.Row, "such stroke", "such strokes")} without 2 s of rest from {places.BarOf(fatigue.RowAt)} on, where more than {fatigue.RowTires:0.#} tire");
    }
}
