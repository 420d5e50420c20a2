using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Tests.Playing;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Tests.Voicings;

/// <summary>
/// A small tower, and by brute force all that can be struck together on it: every bell of the chord to every limb or to none, kept
/// where the rules of ../shared/design/3 hold. It shares nothing with the search but the checker's limits.
/// </summary>
internal static class NineBells
{
    private static readonly Limb?[] Choices = [null, Limb.LeftFoot, Limb.RightFoot, Limb.LeftHand, Limb.RightHand];

    public static Tower Tower { get; } = TowerFile.Read(
        "nine.toml",
        """
        name = "Merrowhaven Net Loft"
        lowest = "C4"
        highest = "D5"
        missing = ["C#4", "D#4", "F#4", "G#4", "A#4", "C#5"]
        pedals = ["C4", "B4"]
        sounds = 12
        """) is Reading<Tower>.Accepted { Value: var tower } ? tower : throw new InvalidOperationException("the tower cannot be read");

    /// <summary>"LeftFoot C4, RightHand E5".</summary>
    public static string Text(IEnumerable<SlotStroke> strokes) =>
        string.Join(", ", strokes.OrderBy(s => s.Note).Select(s => $"{s.Limb} {s.Note}"));

    public static IEnumerable<string> Together(Slot slot) => All([.. Tower.Bells.Select(b => b.Note).Where(n => slot.Symbol.PitchClasses.Contains(n.PitchClass))])
        .Where(strokes => strokes.Length > 0 && IsOffered(strokes, slot.Symbol) && Sounds(strokes, slot) && IsPlayable(strokes))
        .Select(Text);

    private static IEnumerable<SlotStroke[]> All(WrittenNote[] upward) => upward.Length == 0
        ? [[]]
        : All(upward[1..]).SelectMany(above => Choices.Select(limb =>
            limb is { } taken ? [new SlotStroke(upward[0], taken, Beats.Zero, 0), .. above] : above));

    // The hands above the feet and in order; two tones to two hands, three at most, over two pedals two;
    // the lower pedal a bass tone, the higher a root or fifth at least a fifth above; one pedal to the nearer foot.
    private static bool IsOffered(SlotStroke[] upward, ChordSymbol symbol)
    {
        var feet = upward.Where(s => s.IsPedal).ToArray();
        var hands = upward.Where(s => !s.IsPedal).ToArray();
        var middle = (Tower.PedalsFrom.Midi + Tower.PedalsTo.Midi) / 2;
        return feet.Length <= 2
            && hands.Length <= (feet.Length == 2 ? 2 : 3)
            && feet.All(f => hands.All(h => f.Note < h.Note))
            && hands.Zip(hands.Skip(1)).All(pair => pair.First.Limb <= pair.Second.Limb)
            && (hands.Length < 2 || hands[0].Limb != hands[^1].Limb)
            && (feet.Length == 0 || IsBass(feet[0], symbol))
            && (feet.Length != 1 || feet[0].Limb == (feet[0].Note.Midi <= middle ? Limb.LeftFoot : Limb.RightFoot))
            && (feet.Length != 2 || IsPair(feet[0], feet[1], symbol));
    }

    private static bool IsBass(SlotStroke pedal, ChordSymbol symbol) =>
        IsTone(pedal, symbol, 1, 3, 5, 7) || pedal.Note.PitchClass == symbol.Lowest.PitchClass;

    private static bool IsPair(SlotStroke low, SlotStroke high, ChordSymbol symbol) =>
        (low.Limb, high.Limb) == (Limb.LeftFoot, Limb.RightFoot)
        && high.Note.Midi - low.Note.Midi >= 7
        && IsTone(high, symbol, 1, 5);

    private static bool IsTone(SlotStroke stroke, ChordSymbol symbol, params int[] degrees) =>
        symbol.Tones.Any(t => degrees.Contains(t.Degree.Number) && t.PitchClass == stroke.Note.PitchClass);

    // Third or suspended tone, seventh, alterations and slash bass where the hands play; three tones from a second on. Where the hands
    // play and no tone is there twice, what may ring on from the chord before is as good as struck.
    private static bool Sounds(SlotStroke[] strokes, Slot slot)
    {
        var sounding = strokes.Select(s => s.Note.PitchClass).ToHashSet();
        if (strokes.Any(s => !s.IsPedal) && sounding.Count == strokes.Length)
        {
            sounding.UnionWith(slot.Symbol.Tones.Select(t => t.PitchClass).Where(slot.Shared.Contains));
        }

        var asked = slot.Symbol.Tones.Where(t => t.Role == ToneRole.Guide).Select(t => t.PitchClass).ToHashSet();
        if (slot.Symbol.Bass is { } bass)
        {
            asked.Add(bass.PitchClass);
        }

        var atLeast = slot.Duration >= new Seconds(1) ? Math.Min(3, slot.Symbol.PitchClasses.Count) : 1;
        return sounding.Count >= atLeast && (strokes.All(s => s.IsPedal) || asked.IsSubsetOf(sounding));
    }

    private static bool IsPlayable(SlotStroke[] strokes) =>
        new Checker(Tower).Check(strokes.Select(s => Strokes.Of(s.Note, s.Limb, new Seconds(1)))).Count == 0;
}
