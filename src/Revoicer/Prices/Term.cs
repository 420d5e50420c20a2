using System.Runtime.CompilerServices;
using Revoicer.Values;

namespace Revoicer.Prices;

/// <summary>What a voicing is priced for.</summary>
public enum Term
{
    /// <summary>Roughness among the slot's own strokes.</summary>
    OwnRoughness,

    /// <summary>Roughness with the tune, wherever it rings with the slot's strokes.</summary>
    WithTune,

    /// <summary>Strokes close under a note of the tune while it is held.</summary>
    NearTune,

    /// <summary>Strokes of the tune that are drowned by what is struck with them.</summary>
    Drowned,

    /// <summary>Partials that contradict this chord and those that follow.</summary>
    Contradiction,

    /// <summary>Tones of the chord left out.</summary>
    MissingTones,

    /// <summary>Tones left to the chord before, which has not struck them.</summary>
    NotRinging,

    /// <summary>Fewer bells than a full chord has.</summary>
    Thin,

    /// <summary>A third low and close over the bass.</summary>
    LowThird,

    /// <summary>Hands that strike nothing.</summary>
    BareHands,

    /// <summary>Tones struck on more than one bell.</summary>
    DoubledTones,

    /// <summary>Another bass than the symbol's, or none.</summary>
    Bass,

    /// <summary>The figure.</summary>
    Figure,

    /// <summary>What is wanting in carry.</summary>
    Carry,

    /// <summary>What is wanting in brightness.</summary>
    Brightness,

    /// <summary>An empty stretch between the bass and the tones above it.</summary>
    Gap,

    /// <summary>Stretches and heavy keys within the slot.</summary>
    Effort,

    /// <summary>Roughness against what other slots have ringing.</summary>
    Ringing,

    /// <summary>How far the tones above the bass move.</summary>
    VoiceLeading,

    /// <summary>Tones that do not go where they lead: leading tones, sevenths, suspended fourths.</summary>
    Tendency,

    /// <summary>A sudden change of the number of tones in the hands.</summary>
    NumberOfTones,

    /// <summary>Leaps of the highest tone where there is no tune, and where it lies outside the tune's home.</summary>
    TopLine,

    /// <summary>Leaps of the bass, basses not reached by step, and the same bell again under a held chord.</summary>
    BassLine,

    /// <summary>A tone that leads by step into the next bass, which is worth something: the only term below nothing.</summary>
    Approach,

    /// <summary>Quick leaps of a limb.</summary>
    Moves,

    /// <summary>A change of figure within a phrase.</summary>
    Steadiness,

    /// <summary>Bells other than those that stood there before.</summary>
    FromOriginal,
}

/// <summary>The terms in words.</summary>
public static class TermNames
{
    /// <summary>All terms, in the order of the price list.</summary>
    public static Items<Term> All { get; } = Enum.GetValues<Term>().ToItems();

    /// <summary>"roughness among its own bells".</summary>
    public static string Of(Term term) => term switch
    {
        Term.OwnRoughness => "roughness among its own bells",
        Term.WithTune => "roughness with the tune",
        Term.NearTune => "close under the tune",
        Term.Drowned => "tune drowned",
        Term.Contradiction => "contradiction of the chord",
        Term.MissingTones => "tones left out",
        Term.NotRinging => "tones that do not ring on",
        Term.Thin => "few bells",
        Term.LowThird => "low third",
        Term.BareHands => "nothing in the hands",
        Term.DoubledTones => "tones doubled",
        Term.Bass => "bass",
        Term.Figure => "figure",
        Term.Carry => "carry",
        Term.Brightness => "brightness",
        Term.Gap => "gap above the bass",
        Term.Effort => "effort",
        Term.Ringing => "roughness with the chords before and after",
        Term.VoiceLeading => "voice leading",
        Term.Tendency => "tones not led on",
        Term.NumberOfTones => "sudden change of fullness",
        Term.TopLine => "line on top",
        Term.BassLine => "bass line",
        Term.Approach => "tone that leads into the next bass",
        Term.Moves => "quick leaps",
        Term.Steadiness => "change of figure",
        Term.FromOriginal => "distance from what was there",
        _ => throw new ArgumentOutOfRangeException(nameof(term), term, "no such term"),
    };
}

/// <summary>A price in thousandths of a clash unit, term by term; the default value is nothing.</summary>
[InlineArray(Count)]
public struct TermPrices
{
    /// <summary>How many terms there are.</summary>
    public const int Count = 27;

    private int _first;

    /// <summary>One term's price.</summary>
    public int this[Term term]
    {
        readonly get => this[(int)term];
        set => this[(int)term] = value;
    }

    /// <summary>The sum over all terms.</summary>
    public readonly long Sum()
    {
        var sum = 0L;
        foreach (var price in (ReadOnlySpan<int>)this)
        {
            sum += price;
        }

        return sum;
    }

    /// <summary>Adds another's terms to these; a term that has run to the largest number, as what cannot be does, stays there.</summary>
    public void Add(in TermPrices other)
    {
        for (var i = 0; i < Count; i++)
        {
            this[i] = (int)Math.Min((long)this[i] + other[i], int.MaxValue);
        }
    }
}
