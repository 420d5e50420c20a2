using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Chords;
using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Benchmarks;

/// <summary>How a draft follows the basses of its symbols.</summary>
/// <param name="Changes">Chords with another bass, root or slash, than the one before.</param>
/// <param name="Struck">Those of which a foot strikes that bass first.</param>
/// <param name="Steps">Struck changes of one or two semitones from a bass that was struck or still rings.</param>
/// <param name="ByStep">Those that the bells take in one or two semitones as well.</param>
internal readonly record struct BassFigures(int Changes, int Struck, int Steps, int ByStep)
{
    private const int WholeTone = 2;

    public static BassFigures Of(Arrangement made)
    {
        var figures = default(BassFigures);
        (PitchClass? Asked, WrittenNote? Sounding) before = default;
        foreach (var choice in made.Choices.OrderBy(c => c.Start))
        {
            var asked = BassOf(choice.Symbol);
            var bass = choice.Strokes.Where(s => s.IsPedal).OrderBy(s => s.Beat).ThenBy(s => s.Note).Select(s => (WrittenNote?)s.Note).FirstOrDefault();
            var isStruck = asked is not null && bass?.PitchClass == asked;
            if (asked is { } now && before.Asked is { } last && now != last)
            {
                var isStep = isStruck && before.Sounding is not null && Apart(now, last) <= WholeTone;
                var isByStep = isStep && (bass!.Value - before.Sounding!.Value).Size.Semitones <= WholeTone;
                figures += new BassFigures(1, isStruck ? 1 : 0, isStep ? 1 : 0, isByStep ? 1 : 0);
            }

            before = (asked, isStruck ? bass : bass is null && asked == before.Asked ? before.Sounding : null);
        }

        return figures;
    }

    public static BassFigures operator +(BassFigures a, BassFigures b) => new(a.Changes + b.Changes, a.Struck + b.Struck, a.Steps + b.Steps, a.ByStep + b.ByStep);

    private static int Apart(PitchClass a, PitchClass b) => Math.Min((a.Value - b.Value + 12) % 12, (b.Value - a.Value + 12) % 12);

    private static PitchClass? BassOf(string symbol) =>
        ChordSymbolReader.Read(symbol, Place.WholeFile("")) is Reading<ChordText>.Accepted { Value: ChordText.Chord chord } ? chord.Symbol.Lowest.PitchClass : null;
}
