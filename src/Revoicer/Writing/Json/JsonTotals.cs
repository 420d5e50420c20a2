using System.Text.Json;
using Revoicer.Arrangements;
using Revoicer.Playing;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of the figures of a whole arrangement.</summary>
internal static class JsonTotals
{
    public static void Write(Utf8JsonWriter json, Totals totals)
    {
        json.WriteNumber("price", totals.Price);
        json.WriteNumber("clashDose", totals.ClashDose);
        json.WriteNumber("medianClash", totals.MedianClash);
        json.WriteNotes("bellsUsed", totals.BellsUsed);
        json.WriteNote("pedalsTo", totals.PedalsTo);
        json.WriteNumber("rootLowest", totals.RootLowest);
        json.WriteNumber("heaviestFrom", totals.HeaviestFrom.Value);
        json.WriteNumber("heaviestStrokes", totals.HeaviestStrokes);
        json.WriteNumber("tuneDose", totals.TuneDose);
        json.WriteNumber("carry", totals.Carry.Value);
        json.WriteNumber("carryAtEqualTouch", totals.CarryAtEqualTouch.Value);
        json.WriteNumber("brightness", totals.Brightness.Value);
        json.WriteLine("strongBeats", totals.StrongBeats, Write);
        json.WriteNumber("closeRootDose", totals.CloseRootDose);
        json.WriteNumber("closeRootStrokes", totals.CloseRootStrokes);
        json.WriteNumber("plainHandDose", totals.PlainHandDose);
        json.WriteNumber("plainHandStrokes", totals.PlainHandStrokes);
        json.WriteLine("fatigue", totals.Fatigue, Write);
        json.WriteLine("softTune", totals.SoftTune, Write);
        json.WriteTexts("leftOut", totals.LeftOut);
    }

    public static void Write(Utf8JsonWriter json, StrongBeats beats)
    {
        json.WriteNumber("withBass", beats.WithBass);
        json.WriteNumber("longEnough", beats.LongEnough);
        json.WriteNumber("all", beats.All);
    }

    public static void Write(Utf8JsonWriter json, Fatigue fatigue)
    {
        json.WriteNumber("level", fatigue.Level);
        json.WriteNumber("levelAt", fatigue.LevelAt.Value);
        json.WriteNumber("tires", fatigue.Tires);
        json.WriteNumber("tooMuch", fatigue.TooMuch);
        json.WriteNumber("row", fatigue.Row);
        json.WriteNumber("rowAt", fatigue.RowAt.Value);
        json.WriteNumber("rowTires", fatigue.RowTires);
    }

    private static void Write(Utf8JsonWriter json, SoftTune soft)
    {
        json.WriteNumber("count", soft.Count);
        json.WriteNumber("under", soft.Under.Value);
        json.WriteNumber("at", soft.At.Value);
    }
}
