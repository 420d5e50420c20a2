namespace Revoicer.Pictures;

/// <summary>Draws what a comparison says, for print at a width of 16 cm; black on white, so that no colour is needed.</summary>
public static class ComparisonPictures
{
    /// <summary>The clash of every chord over the bars, a line for each setting.</summary>
    public static Drawing Clash(ClashOverBars clash) => ClashPictures.Draw(family => ClashOverBarsDrawing.Draw(clash, family), Lettering.Family());

    /// <summary>Clash against carry, a mark for each draft.</summary>
    public static Drawing TradeOff(TradeOffChart chart) => ClashPictures.Draw(family => TradeOffDrawing.Draw(chart, family), Lettering.Family());

    /// <summary>Price and clash in every key, and which can be played.</summary>
    public static Drawing Keys(KeyChart chart) => ClashPictures.Draw(family => KeyChartDrawing.Draw(chart, family), Lettering.Family());

    /// <summary>One chord under several settings: on the keyboard the bells struck, above it their partials, and those that quarrel joined.</summary>
    public static Drawing Chord(ChordStrips strips) => ClashPictures.Draw(family => ChordStripsDrawing.Draw(strips, family), Lettering.Family());
}
