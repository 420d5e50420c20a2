using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Tests.Playing;

/// <summary>Strokes and towers as short text: "lf C3" is the left foot on C3, "rh E5 @0.25" the right hand 0.25 s later.</summary>
internal static class Strokes
{
    private const string Compass = """
        name = "Merrowhaven Trial Frame"
        lowest = "G2"
        highest = "C7"
        missing = ["C#3"]
        pedals = ["G2", "C5"]
        sounds = 12

        """;

    /// <summary>A tower from G2 to C7 without C#3, pedals to C5, at concert pitch, with lines of its [limits].</summary>
    public static Tower Tower(string limits = "") =>
        TowerFile.Read("trial.toml", limits.Length == 0 ? Compass : $"{Compass}[limits]\n{limits}\n") switch
        {
            Reading<Tower>.Accepted { Value: var tower } => tower,
            var refused => throw new InvalidOperationException($"{refused}"),
        };

    /// <summary>Strokes, separated by commas.</summary>
    public static Stroke[] Of(string text) => [.. text.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(One)];

    public static Stroke Of(WrittenNote note, Limb limb, Seconds at) =>
        new(note, limb, Beats.Zero, Seconds.Zero, at, Decibels.Zero);

    public static WrittenNote Note(string name) => NoteSpelling.TryMidi(name, out var midi)
        ? WrittenNote.AtMidi(midi)
        : throw new ArgumentException($"'{name}' is no note", nameof(name));

    private static Stroke One(string text)
    {
        var words = text.Split(' ', '@').Where(w => w.Length > 0).ToArray();
        var limb = words[0] switch
        {
            "lf" => Limb.LeftFoot,
            "rf" => Limb.RightFoot,
            "lh" => Limb.LeftHand,
            "rh" => Limb.RightHand,
            _ => throw new ArgumentException($"'{words[0]}' is no limb", nameof(text)),
        };
        return Of(Note(words[1]), limb, new Seconds(words.Length > 2 ? double.Parse(words[2], System.Globalization.CultureInfo.InvariantCulture) : 0));
    }
}
