using Revoicer.Music;
using Revoicer.Playing;

namespace Revoicer.Writing.MusicXml;

/// <summary>Which notes of a bar take an accidental: those that neither key nor an earlier accidental of the bar spells.</summary>
internal sealed class Accidentals
{
    private static readonly string[] Names = ["flat-flat", "flat", "natural", "sharp", "double-sharp"];

    private readonly HashSet<(ScorePiece Piece, Stroke Stroke)> _marked = [];

    /// <summary>Looks through the voices of one staff together.</summary>
    /// <param name="voices">The signs of each voice of the staff.</param>
    /// <param name="key">The key; null counts as none.</param>
    /// <param name="nameOf">How a stroke is spelled.</param>
    public Accidentals(IEnumerable<IReadOnlyList<ScorePiece>> voices, KeySignature? key, Func<Stroke, NoteName> nameOf)
    {
        var now = new Dictionary<(Letter, int), int>();
        foreach (var piece in voices.SelectMany(v => v).Where(p => p is { Note: not null, IsTiedBack: false }).OrderBy(p => p.Start))
        {
            foreach (var stroke in piece.Note!.Strokes)
            {
                var name = nameOf(stroke);
                var place = (name.Letter, PaperSpelling.OctaveOf(stroke.Note, name));
                if (name.Alteration != now.GetValueOrDefault(place, OfKey(name.Letter, key?.Fifths ?? 0)))
                {
                    _marked.Add((piece, stroke));
                }

                now[place] = name.Alteration;
            }
        }
    }

    /// <summary>The accidental (accidental-value of MusicXML 4.0) before a note; null where it takes none.</summary>
    public string? Of(ScorePiece piece, Stroke stroke, NoteName name) =>
        _marked.Contains((piece, stroke)) ? Names[name.Alteration + 2] : null;

    // The signature raises F C G D A E B in this order and lowers them in the other.
    private static int OfKey(Letter letter, int fifths)
    {
        var place = new NoteName(letter).FifthsFromC + 1;
        return fifths > place ? 1 : fifths < place - 6 ? -1 : 0;
    }
}
