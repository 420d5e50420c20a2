using Revoicer.Arrangements;

namespace Revoicer.Benchmarks;

/// <summary>How drafts follow the basses of their symbols, as <see cref="MusicFigures"/> counts it, so that it can be added up.</summary>
/// <param name="Changes">Chords with another bass, root or slash, than the one before.</param>
/// <param name="Struck">Those of which a foot strikes that bass first.</param>
/// <param name="Steps">Struck changes of one or two semitones from a bass that was struck or still rings.</param>
/// <param name="ByStep">Those that the bells take in one or two semitones as well.</param>
internal readonly record struct BassFigures(int Changes, int Struck, int Steps, int ByStep)
{
    public static BassFigures Of(Arrangement made)
    {
        var figures = MusicFigures.Of(made).ToDictionary(f => f.Name, f => f.Value);
        var (changes, steps) = ((int)figures["change"]!, (int)figures["steps"]!);
        return new BassFigures(changes, Counted("struck", changes), steps, Counted("step", steps));

        int Counted(string share, int of) => figures[share] is double part ? (int)Math.Round(part * of) : 0;
    }

    public static BassFigures operator +(BassFigures a, BassFigures b) => new(a.Changes + b.Changes, a.Struck + b.Struck, a.Steps + b.Steps, a.ByStep + b.ByStep);
}
