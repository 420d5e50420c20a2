namespace Revoicer.Arrangements;

/// <summary>The layout that was weighed and not taken.</summary>
/// <param name="Price">The price of everything, what the tune costs with itself included, in thousandths of a clash unit.</param>
/// <param name="ClashDose">The clash dose of all that is struck, the tune with itself left out, in clash units.</param>
/// <param name="TuneDose">The clash dose of the tune with itself.</param>
/// <param name="MedianClash">The median over the chords of the clash figure, the tune with itself left out.</param>
public sealed record OtherLayout(long Price, double ClashDose, double TuneDose, double MedianClash);
