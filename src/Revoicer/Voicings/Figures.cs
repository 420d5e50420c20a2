using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>The figures, a row each. A new figure is a value of <see cref="Figure"/> and a row here.</summary>
internal static class Figures
{
    // The last chord comes after its bass only where the hands come too late for anything else. Estimate, in clash units.
    private const double LateLastChord = 30;

    // A roll that is welcome but not expected is missed a quarter as much. Estimate.
    private const double Expected = 4;

    private static readonly PartAt[] OnTheBeat = [new(Beats.Zero, Part.All)];

    /// <summary>All figures, in the order of <see cref="Figure"/>.</summary>
    public static readonly FigureRow[] All =
    [
        new(Figure.Silent, "silent", Anything, Never, Free) { IsManner = false },
        new(Figure.Together, "together", Anything, _ => OnTheBeat, (s, m) => m.MarksForm ? s.RollForgone : m.WelcomesRoll ? s.RollForgone / Expected : 0),
        new(Figure.Rolled, "rolled", "two bells, and room before the chord", Roll, (s, m) => m.WelcomesRoll ? 0 : s.Rolled) { IsRoll = true },
        new(Figure.BassFirst, "bass first", "a bass bell and the hands, and a beat between them", BassFirst, (s, m) => s.BassFirst + (m.IsLast ? LateLastChord : 0)),
        new(Figure.Afterbeats, "afterbeats", "a bass bell and the hands, a strong beat, and two weak beats after it", Afterbeats, (s, _) => s.Afterbeats),
        new(Figure.Broken, "broken", "three bells, and as many beats as bells", Broken, (s, _) => s.Broken) { NeedsGrip = false },
        new(Figure.InTenths, "in tenths", "a tune over it in which the bass can move a tenth or seventeenth below", Never, (s, _) => s.InTenths),
        new(Figure.AsItWas, "as it was", "music that exists and is to stay close to what it was", Never, Free) { IsManner = false },
    ];

    private const string Anything = "bells that can be taken there";

    /// <summary>The row of a figure.</summary>
    public static FigureRow Of(Figure figure) => All[(int)figure];

    private static double Free(Sound sound, FigureMoment moment) => 0;

    // What does not come of the bells of a chord alone.
    private static PartAt[]? Never(FigureSite site) => null;

    private static PartAt[]? Roll(FigureSite site) => site.Bells >= 2 && !site.Slot.IsPassing ? OnTheBeat : null;

    private static PartAt[]? BassFirst(FigureSite site) => site.HasBoth && !site.Slot.IsPassing && (site.Slot.IsLast || site.Slot.Length > site.Slot.Beat)
        ? [new(Beats.Zero, Part.Bass), new(NextBeat(site.Slot), Part.Rest)]
        : null;

    private static PartAt[]? Afterbeats(FigureSite site) =>
        site.HasBoth && site.Slot is { IsStrong: true, IsLast: false } && WeakBeats(site.Slot).ToArray() is { Length: >= 2 } beats
            ? [new(Beats.Zero, Part.Bass), .. beats.Select(beat => new PartAt(beat, Part.Rest))]
            : null;

    private static PartAt[]? Broken(FigureSite site) => site.Bells >= 3 && !site.Slot.IsLast && site.Slot.Beat * site.Bells <= site.Slot.Length
        ? [.. Enumerable.Range(0, site.Bells).Select(i => new PartAt(site.Slot.Beat * i, Part.One, i))]
        : null;

    private static Beats NextBeat(Slot slot)
    {
        if (slot.Length <= slot.Beat)
        {
            return slot.Length / 2;
        }

        var intoBeat = slot.InBar - (slot.Beat * Beats.WholeTimes(slot.InBar, slot.Beat));
        return slot.Beat - intoBeat;
    }

    // The beats of the bar after the first of the slot and before its end that are not strong.
    private static IEnumerable<Beats> WeakBeats(Slot slot)
    {
        for (var after = slot.Beat; after < slot.Length; after += slot.Beat)
        {
            var inBar = slot.InBar + after;
            var bars = Beats.WholeTimes(inBar, slot.Meter.Bar);
            if (!slot.Meter.IsStrong(inBar - (slot.Meter.Bar * bars)))
            {
                yield return after;
            }
        }
    }
}
