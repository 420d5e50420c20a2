using Revoicer.Pictures;

namespace Revoicer.Cli.Comparisons;

/// <summary>A picture of a comparison on its way to its files.</summary>
/// <param name="Ending">What stands behind the name of the run in its files' names: "-clash".</param>
/// <param name="Drawing">The drawing.</param>
/// <param name="Aside">What is to be told of it, as a clause; null for nothing.</param>
internal sealed record ComparedPicture(string Ending, Drawing Drawing, string? Aside);
