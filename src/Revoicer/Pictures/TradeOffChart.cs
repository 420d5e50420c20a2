using System.Globalization;
using Revoicer.Comparisons;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Writing.Text;

namespace Revoicer.Pictures;

/// <summary>The drafts of a trade-off by carry and clash.</summary>
/// <param name="Points">The drafts, carry and clash rising; at least one.</param>
/// <param name="AsItStands">The draft in the sound as it stands, by the sound's name; null where there is none.</param>
/// <param name="HasTune">Whether what the tune clashes with itself is counted in.</param>
public sealed record TradeOffChart(Items<TradeOffMark> Points, TradeOffMark? AsItStands, bool HasTune)
{
    /// <summary>The marks of a trade-off, numbered as in its table; null where nothing could be drafted.</summary>
    public static TradeOffChart? Of(TradeOff tradeOff)
    {
        var points = tradeOff.Points;
        return points.Count == 0
            ? null
            : new TradeOffChart(
                points.Select((p, i) => Mark((i + 1).ToString(CultureInfo.InvariantCulture), p.Compared.Figures!)).ToItems(),
                tradeOff.AsItStands.Figures is { } figures ? Mark(VisibleText.OneLine(tradeOff.AsItStands.Setting.Sound), figures) : null,
                tradeOff.TuneMoves);

        TradeOffMark Mark(string name, SettingFigures figures) => new(name, figures.Carry, tradeOff.Clash(figures));
    }
}
