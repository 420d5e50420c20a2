namespace Revoicer.Solving;

/// <summary>A choice and how good it is known to be.</summary>
/// <param name="Choice">For each slot the number of a candidate.</param>
/// <param name="Price">Its whole price.</param>
/// <param name="Bound">No choice that keeps the rules is cheaper.</param>
/// <param name="Starts">From how many starts the search went.</param>
internal readonly record struct BoundedChoice(int[] Choice, long Price, long Bound, int Starts);
