using Revoicer.Playing;
using Revoicer.Values;

namespace Revoicer.Writing.Json;

/// <summary>Where strokes stand in a list of them, by which a chord names its own.</summary>
internal sealed class StrokePlaces
{
    private readonly Dictionary<Stroke, int> _places = [];

    /// <summary>The places of strokes; of equal ones the first.</summary>
    public StrokePlaces(Items<Stroke> strokes)
    {
        foreach (var (place, stroke) in strokes.Index())
        {
            _places.TryAdd(stroke, place);
        }
    }

    /// <summary>The places of some of them, counted from 0.</summary>
    /// <exception cref="ArgumentException">A stroke that is not in the list.</exception>
    public IEnumerable<int> Of(Items<Stroke> strokes) => strokes.Select(stroke => _places.TryGetValue(stroke, out var place)
        ? place
        : throw new ArgumentException($"a chord has the stroke {stroke}, which is none of the list", nameof(strokes)));
}
