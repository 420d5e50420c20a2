using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>Another voicing of a chord that every rule admits, with all other chords as chosen.</summary>
/// <param name="Figure">Its figure.</param>
/// <param name="Notes">Its bells, lowest first.</param>
/// <param name="CostsMore">By how much the whole would cost more, in thousandths; negative only where the search ended before it was tried.</param>
/// <param name="Differences">Terms in which it differs, the worst first: its price less the chosen one's.</param>
public sealed record Alternative(string Figure, Items<WrittenNote> Notes, long CostsMore, Items<PricedTerm> Differences);

/// <summary>A voicing that would cost less than the chosen one, with all other chords as chosen, but breaks a rule.</summary>
/// <param name="Figure">Its figure.</param>
/// <param name="Notes">Its bells, lowest first.</param>
/// <param name="CostsLess">By how much the whole would cost less, in thousandths; above 0.</param>
/// <param name="Rule">The rule, as a clause.</param>
public sealed record BarredVoicing(string Figure, Items<WrittenNote> Notes, long CostsLess, string Rule);
