using Revoicer.Music;
using Revoicer.Voicings;

namespace Revoicer.Writing.Text;

/// <summary>Why what stood in a chord's place could not stay, in words.</summary>
internal static class FormerWords
{
    /// <summary>"no bell for Eb3".</summary>
    public static string Obstacle(Obstacle? obstacle, Func<WrittenNote, string> name)
    {
        var notes = string.Join(' ', obstacle?.Notes.Select(name) ?? []);
        return obstacle?.Kind switch
        {
            ObstacleKind.NoBell => $"no bell for {notes}",
            ObstacleKind.NearTune => $"{notes} less than a minor third from the tune",
            ObstacleKind.NoTime => "no time for hands and feet from the chord before or to the next, as these are now",
            _ => "too much for hands and feet under this tune at this speed",
        };
    }
}
