using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>
/// Leaves out approach tones that can never pay: where the tone, with what it rings into of the next bass at the least, costs
/// more than it can save, the same chord without it is cheaper in every choice. This only makes the search quicker.
/// </summary>
internal sealed class UsefulApproaches(Instrument instrument, Sound sound)
{
    private const int WholeTone = 2;
    private const int Fifth = 7;

    /// <summary>The candidates of a slot that are left.</summary>
    public Items<Candidate> Of(PricedSlot slot)
    {
        var candidates = slot.Candidates;
        var without = new Dictionary<(Figure, Voicing), long>();
        foreach (var (c, candidate) in candidates.Index().Where(c => c.Item.Approach is null))
        {
            without.TryAdd((candidate.Figure, candidate.Voicing), slot.Prices[c]);
        }

        var most = slot.Slot.Hearings.Count * (long)Thousandths.Of(Math.Max(0, Math.Max(sound.ThirdInBass, sound.OtherBass) - sound.WeakBeatBass));
        return candidates.Index().Where(c => MayPay(c.Index, c.Item)).Select(c => c.Item).ToItems();

        bool MayPay(int number, Candidate candidate) =>
            candidate is not { Approach: { } tone, Voicing.Bass: { } bass }
            || slot.Prices[number] + (slot.Slot.Hearings.Count * RingsOn(slot.Slot, tone)) < without[(candidate.Figure, candidate.Voicing)] + most + (slot.Slot.Hearings.Count * Leap(bass, tone));
    }

    // What a leap to the next bass, which lies a step beyond the tone, can cost more than that step.
    private long Leap(WrittenNote bass, WrittenNote tone) =>
        Math.Max(0, (tone - bass).Size.Semitones + WholeTone - Fifth) * (long)Thousandths.Of(sound.BassLeap);

    // What it is rough with at the least: the bass a step beside it, struck a beat later.
    private long RingsOn(Slot slot, WrittenNote tone)
    {
        var beat = StrokeKinds.Microseconds(slot.Duration * (slot.Beat.Quarters / slot.Length.Quarters));
        var steps = new[] { -WholeTone, -1, 1, WholeTone }.Select(step => tone + new Interval(step)).Where(instrument.Tower.HasPedal).ToArray();
        return steps.Length == 0 ? Thousandths.Forbidden : steps.Min(next => (long)instrument.Roughness(instrument.BellAt(tone), instrument.BellAt(next), beat));
    }
}
