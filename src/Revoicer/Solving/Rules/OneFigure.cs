using System.Globalization;
using Revoicer.Voicings;

namespace Revoicer.Solving.Rules;

/// <summary>In a phrase of four and more chords no figure has more than a share of them. Silence is no figure.</summary>
/// <param name="figure">The figure that is counted.</param>
/// <param name="share">The sound's share, 0..1.</param>
public sealed class OneFigure(Figure figure, double share) : PhraseRule
{
    private const int FewestChords = 4;

    /// <inheritdoc/>
    public override string Words => string.Create(
        CultureInfo.InvariantCulture, $"at most {share * 100:0} % of the chords of a phrase of {FewestChords} and more are '{FigureNames.Of(figure)}'");

    /// <summary>All but the chord struck together, which is the norm, are held back by their prices long before.</summary>
    public override bool IsSeldom => figure != Figure.Together;

    /// <inheritdoc/>
    public override int Count(Slot slot, Candidate candidate) => candidate.Figure == figure ? 1 : 0;

    /// <inheritdoc/>
    public override int Most(IEnumerable<Slot> phrase) =>
        phrase.Count() is >= FewestChords and var chords ? (int)Math.Floor((share * chords) + 1e-9) : phrase.Count();
}
