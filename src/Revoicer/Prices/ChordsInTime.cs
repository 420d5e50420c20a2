using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Prices;

/// <summary>Which chord reigns when, as the tower sounds it; the last one reigns until everything has died away.</summary>
internal sealed class ChordsInTime
{
    private readonly (Seconds From, Seconds Until, ChordClasses Chord)[] _reigns;

    public ChordsInTime(SlotPlan plan, Transposition transposition)
    {
        var inTime = plan.InTime().ToArray();
        _reigns = new (Seconds, Seconds, ChordClasses)[inTime.Length];
        for (var i = 0; i < inTime.Length; i++)
        {
            var (slot, hearing) = inTime[i];
            _reigns[i] = (hearing.At, i + 1 == inTime.Length ? Seconds.Forever : hearing.Until, ClassesOf(slot, transposition));
        }
    }

    /// <summary>A slot's chord as the tower sounds it.</summary>
    public static ChordClasses ClassesOf(Slot slot, Transposition transposition) =>
        new ChordClasses(slot.Symbol.PitchClasses, slot.Symbol.Third).Moved(transposition.Semitones);

    /// <summary>Whether a slot comes right before a hearing, with no gap without chord between.</summary>
    public bool HasBefore(Hearing hearing) => hearing.Order > 0 && _reigns[hearing.Order - 1].Until >= hearing.At;

    /// <summary>The contradiction of a stroke at a time of the piece against the chords that reign from then on, in clash units.</summary>
    public double ContradictionFrom(TowerDoses doses, int bell, Seconds struck)
    {
        var (sum, lasting) = (0.0, doses.Lasting);
        for (var i = 0; i < _reigns.Length && _reigns[i].From - struck < lasting; i++)
        {
            if (_reigns[i].Until > struck)
            {
                sum += doses.Contradiction(bell, _reigns[i].Chord, _reigns[i].From - struck, _reigns[i].Until - struck);
            }
        }

        return sum;
    }

    /// <summary>
    /// The contradiction of a stroke against its own chord and all that follow while it rings, in clash units. The lead of
    /// a roll belongs to its own chord.
    /// </summary>
    /// <param name="doses">The tower's doses.</param>
    /// <param name="bell">The bell's place in the tower.</param>
    /// <param name="hearing">The hearing of the slot to which the stroke belongs.</param>
    /// <param name="offset">When it is struck, from the start of the hearing.</param>
    public double Contradiction(TowerDoses doses, int bell, Hearing hearing, Seconds offset)
    {
        var struck = hearing.At + offset;
        var (sum, lasting) = (0.0, doses.Lasting);
        for (var i = hearing.Order; i < _reigns.Length && _reigns[i].From - struck < lasting; i++)
        {
            var from = i == hearing.Order ? Seconds.Zero : _reigns[i].From - struck;
            sum += doses.Contradiction(bell, _reigns[i].Chord, from, _reigns[i].Until - struck);
        }

        return sum;
    }
}
