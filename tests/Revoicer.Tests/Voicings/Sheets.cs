using System.Globalization;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Voicings;

namespace Revoicer.Tests.Voicings;

/// <summary>Sheets as a player types them, and their slots as text.</summary>
internal static class Sheets
{
    /// <summary>The slots of a sheet at the speed it names.</summary>
    public static SlotPlan Plan(string text)
    {
        var sheet = Read(text);
        return SlotCutting.Cut(sheet, TempoMap.Steady(sheet.Tempo ?? throw new ArgumentException("the sheet names no tempo", nameof(text))));
    }

    /// <summary>A sheet of bars in a metre at a speed.</summary>
    public static SlotPlan Plan(string time, int tempo, string bars) => Plan($"time: {time}\ntempo: {tempo}\n{bars}\n");

    /// <summary>"1.1 C 4; 2.3 G7 2": bar and beat, chord, length in quarter notes.</summary>
    public static string Text(SlotPlan plan) => string.Join("; ", plan.Slots.Select(Text));

    public static string Text(Slot slot) =>
        string.Create(CultureInfo.InvariantCulture, $"{slot.Bar}.{slot.BeatNumber} {slot.Symbol} {slot.Length}");

    /// <summary>The chords of the slots of which something holds.</summary>
    public static string Where(SlotPlan plan, Func<Slot, bool> holds) => string.Join("; ", plan.Slots.Where(holds).Select(Text));

    private static LeadSheet Read(string text) => ChordGridReader.Read("trial.chords", text) switch
    {
        Reading<LeadSheet>.Accepted { Value: var sheet } => sheet,
        Reading<LeadSheet>.Refused refused => throw new ArgumentException(string.Concat(refused.Problems), nameof(text)),
        _ => throw new InvalidOperationException("a reading is accepted or refused"),
    };
}
