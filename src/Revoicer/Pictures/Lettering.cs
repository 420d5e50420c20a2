using Revoicer.Values;
using SkiaSharp;

namespace Revoicer.Pictures;

/// <summary>
/// Finds a font for the words of a picture. Where a family is not installed the drawing libraries take any other, be it
/// one of mathematical signs, or leave the words out, both without a sign; so it is asked for beforehand, by name.
/// </summary>
internal static class Lettering
{
    /// <summary>
    /// Families with plain Latin letters, best first. The first is the one in which the pictures of the documents are
    /// lettered; the others are common on other machines.
    /// </summary>
    public static Items<string> Families { get; } =
        ["DejaVu Sans", "Verdana", "Noto Sans", "Liberation Sans", "Arial", "FreeSans", "DejaVu Serif", "Noto Serif", "Liberation Serif"];

    /// <summary>The best family installed on this machine, or null where none of <see cref="Families"/> is.</summary>
    public static string? Family() => FamilyAmong(SKFontManager.Default.FontFamilies);

    /// <summary>The best family of some, or null.</summary>
    public static string? FamilyAmong(IEnumerable<string> installed) => Families.FirstOrDefault(installed.ToHashSet().Contains);
}
