using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Tests.Clashes;

/// <summary>A tower's bells by their strike notes (MIDI), and the price of chords struck on them, in clash units.</summary>
internal sealed class FactBells
{
    private readonly Tower _tower;
    private readonly TowerDoses _price;
    private readonly Dictionary<int, int> _places = [];

    public FactBells(Tower tower, Fade fade)
    {
        (_tower, _price) = (tower, new TowerDoses(tower, fade));
        for (var i = 0; i < tower.Bells.Count; i++)
        {
            _places[tower.Bells[i].StrikeNote.Midi] = i;
        }
    }

    public bool Has(int strike) => _places.ContainsKey(strike);

    public Bell Bell(int strike) => _tower.Bells[_places[strike]];

    /// <summary>Two bells struck together, without a chord.</summary>
    public double Two(int lower, int semitones) => _price.Roughness(_places[lower], _places[lower + semitones], Seconds.Zero);

    /// <summary>Tones of the major chord on a root, struck together.</summary>
    public double Major(int root, params int[] above) => Chord(root, third: 4, above.Select(n => (n, 0.0)));

    /// <summary>Tones of the minor chord on a root, struck together.</summary>
    public double Minor(int root, params int[] above) => Chord(root, third: 3, above.Select(n => (n, 0.0)));

    /// <summary>The close major triad, one tone after another.</summary>
    public double Rolled(int root, double step) => Chord(root, third: 4, [(0, 0), (4, step), (7, 2 * step)]);

    private double Chord(int root, int third, IEnumerable<(int Above, double At)> tones)
    {
        Strike[] strikes = [.. tones.Select(t => new Strike(_places[root + t.Above], new Seconds(t.At), Decibels.Zero))];
        var chord = new ChordClasses(
            PitchClassSet.Of(new[] { 0, third, 7 }.Select(n => PitchClass.Of((root + n) % 12))), PitchClass.Of((root + third) % 12));
        var sum = strikes.Sum(s => _price.Contradiction(s.Bell, chord, Seconds.Zero, Seconds.Forever));
        for (var a = 0; a < strikes.Length; a++)
        {
            for (var b = a + 1; b < strikes.Length; b++)
            {
                sum += _price.Roughness(strikes[a].Bell, strikes[b].Bell, strikes[b].At - strikes[a].At);
            }
        }

        return sum;
    }
}
