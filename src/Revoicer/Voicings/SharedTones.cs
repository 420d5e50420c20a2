using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>
/// Tones that a chord shares with the chord before and need not strike again, as they still ring. A chord strikes its root and
/// its bass itself, and a tone that leads on into the chord after it; the
/// first chord of a phrase, cadences and the last chord are struck whole.
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

        var own = PitchClassSet.Of([slot.Symbol.Root.PitchClass, slot.Symbol.Lowest.PitchClass]);
        var leading = after is null ? default : Tendencies.Between(slot.Symbol, after.Symbol).Tones;
        return slot.Symbol.PitchClasses.Common(before.Slot.Symbol.PitchClasses).Except(own).Except(leading);
    }

    // To a microsecond, so that hearings of one passage are alike.
    private static bool IsShort(Hearing hearing) => (hearing.Until - hearing.At).Value <= Longest.Value + 1e-6;
}
