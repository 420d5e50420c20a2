using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Playing;

namespace Revoicer.Writing.MusicXml;

/// <summary>Finds the chord to which a stroke belongs.</summary>
internal sealed class ChordOfStroke
{
    private readonly Arrangement _arrangement;
    private readonly Dictionary<Stroke, Choice> _choices = [];
    private readonly HashSet<(Choice? Chord, Beats Beat)> _rolls;

    public ChordOfStroke(Arrangement arrangement)
    {
        _arrangement = arrangement;
        foreach (var choice in arrangement.Choices)
        {
            foreach (var stroke in choice.Strokes)
            {
                _choices.TryAdd(stroke, choice);
            }
        }

        _rolls = [.. arrangement.Strokes.Where(s => s.Lead.Value > 0).Select(s => (Of(s), s.Beat))];
    }

    /// <summary>The chord whose voicing the stroke is part of; null for the tune.</summary>
    public Choice? Of(Stroke stroke) => _choices.GetValueOrDefault(stroke);

    /// <summary>The chord over a place, for the spelling of a tune; null where there is none.</summary>
    public Choice? At(Beats place) => _arrangement.Choices.LastOrDefault(c => c.Start <= place && place < c.Start + c.Length);

    /// <summary>Where a stroke's chord ends; null where it has none.</summary>
    public Beats? EndOf(Stroke stroke) => Of(stroke) is { } choice ? choice.Start + choice.Length : null;

    /// <summary>Whether the stroke is part of a roll: one of its chord's strokes leads into the same place.</summary>
    public bool IsRolled(Stroke stroke) => _rolls.Contains((Of(stroke), stroke.Beat)) && (!stroke.IsTune || stroke.Lead.Value > 0);
}
