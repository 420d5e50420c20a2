using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Arrangements;

/// <summary>A term of the price and what it comes to.</summary>
/// <param name="Term">The term's plain name.</param>
/// <param name="Thousandths">Thousandths of a clash unit, weight included.</param>
public sealed record PricedTerm(string Term, long Thousandths);

/// <summary>Lists of priced terms.</summary>
internal static class PricedTerms
{
    /// <summary>The terms that cost something, in the order of the price list.</summary>
    public static Items<PricedTerm> Of(TermPrices prices)
    {
        var terms = new List<PricedTerm>();
        foreach (var term in TermNames.All)
        {
            if (prices[term] != 0)
            {
                terms.Add(new PricedTerm(TermNames.Of(term), prices[term]));
            }
        }

        return terms.ToItems();
    }
}
