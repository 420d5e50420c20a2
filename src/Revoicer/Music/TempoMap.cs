using Revoicer.Values;

namespace Revoicer.Music;

/// <summary>From a place on, this speed holds.</summary>
/// <param name="From">Where it begins, counted from the start of the piece.</param>
/// <param name="Tempo">The speed.</param>
public readonly record struct TempoChange(Beats From, Tempo Tempo);

/// <summary>The speeds of a piece from its start to its end; the last one holds on.</summary>
/// <param name="Changes">In order of place; the first one at zero.</param>
public sealed record TempoMap(Items<TempoChange> Changes)
{
    /// <summary>One speed throughout.</summary>
    public static TempoMap Steady(Tempo tempo) => new([new TempoChange(Beats.Zero, tempo)]);

    /// <summary>When a place in the piece is reached, in seconds from its start.</summary>
    public Seconds At(Beats place)
    {
        var seconds = Seconds.Zero;
        for (var i = 0; i < Changes.Count; i++)
        {
            var change = Changes[i];
            var last = i + 1 == Changes.Count || Changes[i + 1].From >= place;
            if (last)
            {
                return seconds + change.Tempo.Of(place - change.From);
            }

            seconds += change.Tempo.Of(Changes[i + 1].From - change.From);
        }

        throw new InvalidOperationException("a tempo map has at least one tempo");
    }
}
