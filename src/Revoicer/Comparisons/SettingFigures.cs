using Revoicer.Arrangements;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Voicings;

namespace Revoicer.Comparisons;

/// <summary>The figures by which the drafts of a comparison are told apart; docs/comparing.md says what each means.</summary>
public sealed record SettingFigures
{
    // Minor tenth. Common practice: "a tenth" is either.
    private const int Tenth = 15;

    /// <summary>The price of everything, what the tune costs with itself included, in thousandths of a clash unit.</summary>
    public required long Price { get; init; }

    /// <summary>How many chords are heard.</summary>
    public required int Chords { get; init; }

    /// <summary>The clash dose of all that is struck, in clash units; the tune with itself left out.</summary>
    public required double ClashDose { get; init; }

    /// <summary>The clash dose of the tune with itself.</summary>
    public required double TuneDose { get; init; }

    /// <summary>The median over the chords of the clash figure, the tune with itself left out.</summary>
    public required double MedianClash { get; init; }

    /// <summary>The chord with the highest clash figure, the tune with itself left out; of equals the first.</summary>
    public required Choice Worst { get; init; }

    /// <summary>How far the chords carry on the mean, re one stroke of C4 over the same time.</summary>
    public required Decibels Carry { get; init; }

    /// <summary>The same if every bell were struck at 0 dB.</summary>
    public required Decibels CarryAtEqualTouch { get; init; }

    /// <summary>Around which frequency the energy of all chords lies.</summary>
    public required Hertz Brightness { get; init; }

    /// <summary>Stretches, low and mixed keys and quick leaps, in clash units at weight 1; null where the sound gives them no weight, so that they were not counted.</summary>
    public required double? Effort { get; init; }

    /// <summary>How many chords are rolled.</summary>
    public required int Rolls { get; init; }

    /// <summary>How many chords have a bass bell that is neither root nor slash bass.</summary>
    public required int Inversions { get; init; }

    /// <summary>Of the chords with two bells or more beside the tune, the share whose two lowest lie a tenth or more apart, 0..1; 0 where there are none.</summary>
    public required double TenthsAndWider { get; init; }

    /// <summary>New chords on strong beats and their bass bells; null where the tune lies below and is the bass.</summary>
    public required StrongBeats? StrongBeats { get; init; }

    /// <summary>How many strokes there are beside the tune.</summary>
    public required int Strokes { get; init; }

    /// <summary>How many chords strike no bell.</summary>
    public required int SilentChords { get; init; }

    /// <summary>How many chords have one stroke alone.</summary>
    public required int SingleStrokes { get; init; }

    /// <summary>How good the search knows the draft to be; null for what was not searched.</summary>
    public required SearchStatus? Status { get; init; }

    /// <summary>The figures of a draft.</summary>
    public static SettingFigures Of(Drafting.Made made, Sound sound) => Of(made.Arrangement) with
    {
        Effort = sound.Effort > 0
            ? made.Terms.Where(t => t.Term == TermNames.Of(Term.Effort) || t.Term == TermNames.Of(Term.Moves)).Sum(t => t.Thousandths) / 1000.0 / sound.Effort
            : null,
        Status = made.Arrangement.Status,
    };

    /// <summary>The figures of an arrangement of which no search and no effort is known.</summary>
    public static SettingFigures Of(Arrangement arrangement)
    {
        var totals = arrangement.Totals;
        var chords = arrangement.Choices.Select(c => c.Strokes.Select(s => s.Note).Distinct().Order().ToArray()).Where(notes => notes.Length >= 2).ToArray();
        return new SettingFigures
        {
            Price = arrangement.Layout?.Price ?? totals.Price,
            Chords = arrangement.Choices.Count,
            ClashDose = totals.ClashDose,
            TuneDose = totals.TuneDose,
            MedianClash = totals.MedianClash,
            Worst = arrangement.Choices.MaxBy(c => c.Clash.Avoidable)!,
            Carry = totals.Carry,
            CarryAtEqualTouch = totals.CarryAtEqualTouch,
            Brightness = totals.Brightness,
            Effort = null,
            Rolls = arrangement.Choices.Count(c => c.Figure == FigureNames.Of(Figure.Rolled)),
            Inversions = arrangement.Choices.Count(c => c.SoundingBass is not null),
            TenthsAndWider = chords.Length == 0 ? 0 : chords.Count(c => (c[1] - c[0]).Semitones >= Tenth) / (double)chords.Length,
            StrongBeats = arrangement.HasTuneBelow ? null : totals.StrongBeats,
            Strokes = arrangement.Strokes.Count(s => !s.IsTune),
            SilentChords = arrangement.SilentChords,
            SingleStrokes = arrangement.SingleStrokes,
            Status = null,
        };
    }
}
