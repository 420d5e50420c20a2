using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>
/// How the default bell might be otherwise than its law says, within what is not known of it. One value a partial, lowest
/// partial first, as <see cref="BellLaw.PartialNames"/> lists them.
/// </summary>
/// <param name="Levels">
/// What is added to each partial's level (dB): a row a partial, a value for each of the law's four registers (strike C4, C5,
/// C6, C7).
/// </param>
/// <param name="Decays">What each partial's T60 is multiplied by; the hum's changes the others' too, as their law is built on it.</param>
/// <param name="Tierce">The tierce's ratio to the strike frequency in every register; null for the law's own.</param>
public sealed record LawChange(Items<Items<double>> Levels, Items<double> Decays, double? Tierce);
