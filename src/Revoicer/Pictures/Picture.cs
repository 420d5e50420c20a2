using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>One picture in both forms in which it can be kept; the same data give the same bytes on one machine.</summary>
/// <param name="Svg">An SVG 1.1 file, UTF-8; letters are text in it, in the font it was drawn with.</param>
/// <param name="Png">A PNG file, three times as many pixels each way as the SVG has units.</param>
public sealed record Picture(Items<byte> Svg, Items<byte> Png);
