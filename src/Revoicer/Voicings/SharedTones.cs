using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Tones that a chord shares with the chord before and need not strike again, as they still ring. A chord strikes its root and
/// its bass itself, on a new root its third or what is suspended in its place, which tells what chord it is, and a tone that leads
/// on into the chord after it; the first chord of a phrase, cadences and the last chord are struck whole. Common practice.
/// </summary>
internal static class SharedTones
{
    // Of a stroke so long ago attention keeps a quarter, exp(-1.5/1.16) with the fade of the sounds. Estimate. A chord that itself
    // lasts longer is struck whole, as the tone would die away under it.
    private static readonly Seconds Longest = new(1.5);

    /// <summary>The slots of a plan, each with what it shares with the slot before at every hearing.</summary>
    public static SlotPlan In(SlotPlan plan)
    {
        var heard = plan.InTime().ToArray();
        var shared = plan.Slots.Select(slot => slot.Symbol.PitchClasses).ToArray();
        for (var i = 0; i < heard.Length; i++)
        {
            var own = shared[heard[i].Slot.Index];
            shared[heard[i].Slot.Index] = i == 0 ? default : own.Common(Between(heard[i - 1], heard[i], i + 1 < heard.Length ? heard[i + 1].Slot : null));
        }

        return plan with { Slots = plan.Slots.Select(slot => slot with { Shared = shared[slot.Index].Except(slot.TuneTones) }).ToItems() };
    }

    private static PitchClassSet Between((Slot Slot, Hearing Hearing) before, (Slot Slot, Hearing Hearing) heard, Slot? after)
    {
        var (slot, hearing) = heard;
        if (slot.BeginsPhrase || slot.IsLast || slot.IsCadence || !hearing.IsNewChord || before.Hearing.Until < hearing.At || !IsShort(before.Hearing) || !IsShort(hearing))
        {
            return default;
        }

        var symbol = slot.Symbol;
        var isNewRoot = before.Slot.Symbol.Root.PitchClass != symbol.Root.PitchClass;
        var own = PitchClassSet.Of(symbol.Tones.Where(t => t.Role == ToneRole.Root || (isNewRoot && IsThird(t))).Select(t => t.PitchClass)).With(symbol.Lowest.PitchClass);
        var leading = after is null ? default : Tendencies.Between(symbol, after.Symbol).Tones;
        return symbol.PitchClasses.Common(before.Slot.Symbol.PitchClasses).Except(own).Except(leading);
    }

    private static bool IsThird(ChordTone tone) => tone is { Role: ToneRole.Guide, Degree.Number: 2 or 3 or 4 };

    // To a microsecond, so that hearings of one passage are alike.
    private static bool IsShort(Hearing hearing) => (hearing.Until - hearing.At).Value <= Longest.Value + 1e-6;
}
