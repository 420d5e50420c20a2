using Revoicer.Arrangements;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Comparisons;

/// <summary>
/// What carry costs in clash: drafts of one sheet on one tower, each the cheapest of those whose chords carry at least so far, carry itself
/// having no price. A sample: between two of them there are others, and the cheapest is not always the one that clashes least.
/// </summary>
/// <param name="Title">The sheet's title.</param>
/// <param name="AsItStands">The sheet in the sound as it stands, with its price on carry, to hold the others against.</param>
/// <param name="Target">The carry that the sound aims at, where the sample ends.</param>
/// <param name="Drafts">The drafts in the order in which more was asked, the first without asking; at least one.</param>
public sealed record TradeOff(string Title, ComparedSetting AsItStands, Decibels Target, Items<TradeOffPoint> Drafts)
{
    /// <summary>The numbers of written bars of the sheet that are never heard, each once.</summary>
    public Items<int> Unheard { get; init; } = [];

    /// <summary>
    /// Whether the drafts have the tune in different places, so that what it clashes with itself is not alike in all; then
    /// it is counted in.
    /// </summary>
    public bool TuneMoves => Made.Select(d => d.Made!.Arrangement).Select(a => (a.TuneOctaves, a.Layout?.Tune)).Distinct().Count() > 1;

    /// <summary>The drafts that differ and of which no other is better: carry and clash rise from each to the next. None where nothing could be drafted.</summary>
    public Items<TradeOffPoint> Points
    {
        get
        {
            var different = Different;
            return different
                .Where((d, place) => !different.Where((other, otherPlace) => IsBetter(other, d, isEarlier: otherPlace < place)).Any())
                .OrderBy(d => d.Compared.Figures!.Carry.Value)
                .ToItems();
        }
    }

    /// <summary>How many drafts strike the same as one before.</summary>
    public int Same => Made.Count() - Different.Length;

    /// <summary>How many drafts, of those that differ, are left out as another carries no less on the mean and clashes no more.</summary>
    public int Outdone => Different.Length - Points.Count;

    /// <summary>What could not be drafted.</summary>
    public Items<TradeOffPoint> Failed => Drafts.Where(d => d.Made is null).ToItems();

    /// <summary>The clash dose by which drafts are compared here: the tune with itself is in it only where it lies in different places.</summary>
    public double Clash(SettingFigures figures) => figures.ClashDose + (TuneMoves ? figures.TuneDose : 0);

    private IEnumerable<TradeOffPoint> Made => Drafts.Where(d => d.Made is not null);

    private TradeOffPoint[] Different => [.. Made.DistinctBy(d => d.Made!.Arrangement.Strokes)];

    // Of two that come to the same the earlier one stands.
    private bool IsBetter(TradeOffPoint one, TradeOffPoint other, bool isEarlier)
    {
        var (figures, others) = (one.Compared.Figures!, other.Compared.Figures!);
        var (clash, carry) = (Clash(figures).CompareTo(Clash(others)), figures.Carry.Value.CompareTo(others.Carry.Value));
        return clash <= 0 && carry >= 0 && (clash < 0 || carry > 0 || isEarlier);
    }
}
