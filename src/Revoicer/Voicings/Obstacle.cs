using Revoicer.Bells;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Voicings;

/// <summary>Why what was there before cannot be played as it is.</summary>
/// <param name="Kind">What stands in the way.</param>
/// <param name="Notes">Which notes it concerns, upward; none where it concerns them all.</param>
public sealed record Obstacle(ObstacleKind Kind, Items<WrittenNote> Notes)
{
    /// <summary>What stands in the way of what was in a slot, where no way to play it was found.</summary>
    public static Obstacle Of(Tower tower, Reach reach, Slot slot, OriginalChord original)
    {
        var missing = original.Notes.Select(n => n.Note).Where(n => tower.At(n) is null).Distinct().Order().ToItems();
        var near = new TuneFit(slot, reach).TooNear(original.Notes).Distinct().Order().ToItems();
        return missing.Count > 0 ? new Obstacle(ObstacleKind.NoBell, missing)
            : near.Count > 0 ? new Obstacle(ObstacleKind.NearTune, near)
            : new Obstacle(ObstacleKind.NoLimbs, []);
    }
}

/// <summary>What stands in the way of what was there before.</summary>
public enum ObstacleKind
{
    /// <summary>The tower has no bell there.</summary>
    NoBell,

    /// <summary>It lies less than a minor third from the tune that is struck with it, or beyond it.</summary>
    NearTune,

    /// <summary>Hands and feet do not take it in the time and under the tune.</summary>
    NoLimbs,

    /// <summary>By itself it can be played, but no limb has the time from the chord before or to the next, as they are now.</summary>
    NoTime,
}

/// <summary>The obstacles in words.</summary>
public static class ObstacleNames
{
    /// <summary>"no bell".</summary>
    public static string Of(ObstacleKind kind) => kind switch
    {
        ObstacleKind.NoBell => "no bell",
        ObstacleKind.NearTune => "near the tune",
        ObstacleKind.NoLimbs => "no limbs",
        ObstacleKind.NoTime => "no time",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "no such obstacle"),
    };

    /// <summary>The obstacle of a name; null where there is none.</summary>
    public static ObstacleKind? Find(string name) =>
        Enum.GetValues<ObstacleKind>().Select(k => (ObstacleKind?)k).FirstOrDefault(k => Of(k!.Value) == name);
}
