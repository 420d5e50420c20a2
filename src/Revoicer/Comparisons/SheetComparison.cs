namespace Revoicer.Comparisons;

/// <summary>One sheet of several that are compared under the same settings.</summary>
/// <param name="Name">Its file's name.</param>
/// <param name="Comparison">What came of it; null where it could not be read.</param>
public sealed record SheetComparison(string Name, Comparison? Comparison);
