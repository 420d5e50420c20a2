using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>Names places of a piece as a player counts: bar, time through, beat.</summary>
internal sealed class PlaceNames(IPlayedPiece piece)
{
    /// <summary>"bar 3, second time through, beat 2.5".</summary>
    public static string Of(int bar, int pass, double beat) =>
        string.Create(CultureInfo.InvariantCulture, $"{Bar(bar, pass)}, beat {beat:0.##}");

    /// <summary>The name of a place; of its bar alone where it is the bar's beginning.</summary>
    public string Of(Beats place)
    {
        var bar = BarAt(place);
        return place == bar.Start ? Bar(bar.Number, bar.Pass) : Of(bar.Number, bar.Pass, Beat(bar, place));
    }

    /// <summary>The bar in which a moment of the piece as played lies.</summary>
    public string BarOf(Seconds at)
    {
        var bar = piece.Bars[Math.Max(0, Sorted.LastUpTo(piece.Bars, at, Of))];
        return Bar(bar.Number, bar.Pass);

        Seconds Of(ArrangedBar b) => piece.Tempi.At(b.Start) + piece.Shift;
    }

    /// <summary>The bar that holds a place.</summary>
    public ArrangedBar BarAt(Beats place) => piece.Bars[Math.Max(0, Sorted.LastUpTo(piece.Bars, place, b => b.Start))];

    private static string Bar(int number, int pass)
    {
        var name = number == 0 ? "the pickup" : string.Create(CultureInfo.InvariantCulture, $"bar {number}");
        return pass > 1 ? $"{name}, {Sentences.Ordinal(pass)} time through" : name;
    }

    // A pickup fills the end of a bar, so its first beat is not beat 1.
    private static double Beat(ArrangedBar bar, Beats place)
    {
        var before = bar.Number == 0 ? (bar.Meter.Bar - bar.Length).Quarters : 0;
        return (((place - bar.Start).Quarters + before) / bar.Meter.Beat.Quarters) + 1;
    }
}
