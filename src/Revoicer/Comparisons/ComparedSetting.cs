using Revoicer.Arrangements;
using Revoicer.Playing;
using Revoicer.Prices;
using Revoicer.Values;

namespace Revoicer.Comparisons;

/// <summary>One setting of a comparison and what came of it.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Fit">How the sheet fits the tower in that key.</param>
/// <param name="Drafting">What came of drafting it.</param>
public sealed record ComparedSetting(Setting Setting, KeyFit Fit, Drafting Drafting)
{
    /// <summary>The draft's figures; null where there is no draft.</summary>
    public SettingFigures? Figures { get; init; }

    /// <summary>The figures of the plain hand; null where it was not asked for or cannot be had.</summary>
    public SettingFigures? PlainHand { get; init; }

    /// <summary>How many places of the plain hand no player could play.</summary>
    public int PlainHandBreaches { get; init; }

    /// <summary>How long the draft took on this machine, others at work beside it.</summary>
    public Seconds Took { get; init; }

    /// <summary>Where the tune lies in the draft; null where there is no draft or no tune.</summary>
    public TuneLayout? LayoutTaken => Made?.Arrangement.Layout?.Tune;

    /// <summary>The price of everything but what is wanting in carry, in thousandths of a clash unit; 0 where there is no draft.</summary>
    public long PriceWithoutCarry => Figures is null || Made is null ? 0 : Figures.Price - Made.Terms.Where(t => t.Term == TermNames.Of(Term.Carry)).Sum(t => t.Thousandths);

    /// <summary>The draft; null where there is none.</summary>
    public Drafting.Made? Made => Drafting as Drafting.Made;

    /// <summary>Why there is no draft, in sentences; none where there is one.</summary>
    public Items<string> Obstacles => Drafting.Why;
}
