using Revoicer.Text;

namespace Revoicer.Chords;

/// <summary>Something wrong or noteworthy in the text of one symbol, before its place in a file is known.</summary>
/// <param name="Offset">Characters before it in the text.</param>
/// <param name="Length">How many characters it covers.</param>
/// <param name="Found">As in <see cref="Problem"/>.</param>
/// <param name="Expected">As in <see cref="Problem"/>.</param>
internal sealed record SymbolRemark(int Offset, int Length, string Found, string Expected)
{
    public Problem At(Place text) => new(text.Part(Offset, Length), Found, Expected);
}
