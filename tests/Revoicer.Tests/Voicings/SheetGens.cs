using FsCheck;
using FsCheck.Fluent;
using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Voicings;

namespace Revoicer.Tests.Voicings;

/// <summary>A sheet as text, and how long a chord stands over it in all, repeats counted.</summary>
public sealed record GridText(string Text, Beats WithChord);

/// <summary>A slot of a random sheet, a tower to play it on, and the spacing of rolls in milliseconds.</summary>
public sealed record SlotToPlay(Tower Tower, Slot Slot, int RollStep);

/// <summary>Generators for sheets and slots.</summary>
internal static class SheetGens
{
    private static readonly string[] Roots = ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"];

    private static readonly string[] Suffixes =
        ["", "m", "7", "maj7", "m7", "6", "dim", "dim7", "m7b5", "sus4", "sus2", "7sus4", "+", "9", "7b9", "13", "5", "add9", "mMaj7"];

    private static readonly Meter[] Meters = [new(2, 4), new(3, 4), new(4, 4), new(2, 2), new(6, 8), new(9, 8), new(12, 8)];

    public static Gen<string> Symbol =>
        from root in Gen.Elements(Roots)
        from suffix in Gen.Elements(Suffixes)
        from bass in Gen.Frequency((4, Gen.Constant("")), (1, Gen.Elements(Roots).Select(r => "/" + r)))
        select root + suffix + bass;

    // Few different chords, so that neighbours are often alike; one with none.
    public static Arbitrary<GridText> Grids() => (
        from meter in Gen.Elements(Meters)
        from tempo in Gen.Choose(20, 300)
        from repeated in Gen.Elements(true, false)
        from bars in BarOf(meter).NonEmptyListOf()
        let times = repeated ? 2 : 1
        let chorded = bars.SelectMany(b => b).Count(c => c != "N.C.")
        where chorded > 0
        select new GridText(
            $"time: {meter}\ntempo: {tempo}\n{(repeated ? "|:" : "|")} {string.Join(" |\n| ", bars.Select(b => string.Join(' ', b)))} {(repeated ? ":|" : "|")}\n",
            meter.Beat * chorded * times)).ToArbitrary();

    public static Arbitrary<SlotToPlay> Slots() => (
        from tower in Gen.Elements(ShippedTowers.Names.ToArray()).Select(ShippedTowers.Named)
        from meter in Gen.Elements(Meters)
        from tempo in Gen.Choose(20, 300)
        from split in Gen.Choose(1, meter.BeatsInBar)
        where meter.BeatsInBar % split == 0
        from first in Symbol.ArrayOf(split)
        from last in Symbol
        from rollStep in Gen.Choose(40, 90)
        let plan = Sheets.Plan(meter.ToString(), tempo, $"| {string.Join(' ', first)} | {last} |")
        from slot in Gen.Elements(plan.Slots.ToArray())
        select new SlotToPlay(tower, slot, rollStep)).ToArbitrary();

    private static Gen<string[]> BarOf(Meter meter) =>
        Gen.Elements("C", "C", "G", "Am7/G", "N.C.").ArrayOf(meter.BeatsInBar);
}
