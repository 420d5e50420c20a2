using System.Xml.Linq;
using Revoicer.Chords;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads the bars of one part: the notes of one voice, chord symbols, speeds, and the signs for the order of bars.</summary>
internal sealed class PartReader
{
    private static readonly Beats LongestBar = Beats.OfQuarters(1000);

    private readonly XmlPlaces _places;
    private readonly Remarks _remarks;
    private readonly string? _voice;
    private readonly AttributesReader _attributes;
    private readonly HarmonyReader _harmony;
    private readonly NoteReader _notes;
    private readonly DirectionReader _directions;
    private ReadMeasure _measure;
    private Beats _at;
    private Beats _last;
    private XElement? _before;
    private HashSet<(Beats, WrittenNote)> _struck = [];

    private PartReader(string? voice, XmlPlaces places, Remarks remarks)
    {
        (_voice, _places, _remarks) = (voice, places, remarks);
        _attributes = new AttributesReader(places, remarks);
        _harmony = new HarmonyReader(places, remarks);
        _notes = new NoteReader(places, remarks);
        _directions = new DirectionReader(places, remarks);
        _measure = new ReadMeasure(Place.WholeFile(""));
    }

    /// <summary>The bars of a part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="voice">The voice that has the tune; null where no notes are wanted.</param>
    /// <param name="places">Where elements stand.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static IReadOnlyList<ReadMeasure> Read(ScorePart part, string? voice, XmlPlaces places, Remarks remarks)
    {
        var reader = new PartReader(voice, places, remarks);
        var read = new List<ReadMeasure>();
        foreach (var measure in part.Measures.TakeWhile(_ => !remarks.IsFull))
        {
            read.Add(reader.Read(measure));
        }

        if (voice is not null && read.Count > 0 && !reader._attributes.HasMeter)
        {
            remarks.Warn(read[0].Where, "no time signature is given, 4/4 is taken", "a time element in the first bar");
        }

        return read;
    }

    private ReadMeasure Read(PartMeasure measure)
    {
        _measure = new ReadMeasure(_places.Of(measure.Music)) { IsImplicit = measure.IsImplicit, Meter = _attributes.Meter };
        (_at, _last, _before, _struck) = (Beats.Zero, Beats.Zero, null, []);
        foreach (var element in measure.Music.Elements())
        {
            Take(element);
            _before = element;
        }

        if (_measure.Length == Beats.Zero)
        {
            _measure.Length = _measure.Meter?.Bar ?? Beats.OfQuarters(4);
        }

        _directions.Keep(_measure);
        return _measure;
    }

    private void Take(XElement element)
    {
        switch (element.Name.LocalName)
        {
            case "note":
                TakeNote(element);
                break;
            case "backup":
                Move(element, -1);
                break;
            case "forward":
                Move(element, 1);
                break;
            case "attributes":
                TakeAttributes(element);
                break;
            case "harmony":
                TakeHarmony(element);
                break;
            case "direction":
                _directions.Take(element, _at + Offset(element), _measure);
                break;
            case "sound":
                _directions.TakeSound(element, _at + Offset(element), _measure);
                break;
            case "barline":
                BarlineReader.Take(element, _measure, _places, _remarks, isInside: _at > Beats.Zero);
                break;
        }
    }

    // A key or metre inside a bar holds from the next one on.
    private void TakeAttributes(XElement element)
    {
        var (key, meter) = (_attributes.Key, _attributes.Meter);
        _attributes.Take(element);
        if (_attributes.Key != key)
        {
            _measure.Key = _attributes.Key;
        }

        if (_at == Beats.Zero)
        {
            _measure.Meter = _attributes.Meter;
        }
        else if (_attributes.Meter != meter)
        {
            _remarks.WarnOnce(_places.Of(element), "a time signature inside a bar holds from the next bar on", "it at the beginning of a bar");
        }
    }

    private void TakeNote(XElement element)
    {
        if (element.Has("grace"))
        {
            return;
        }

        var isTogether = element.Has("chord");
        if (_notes.Length(element, _attributes.Divisions, _measure.Meter) is not { } length)
        {
            return;
        }

        var start = isTogether ? _last : _at;
        if (!isTogether)
        {
            _last = _at;
            Advance(length, element);
        }

        if (_voice is null || NoteReader.VoiceOf(element) != _voice || element.Has("cue"))
        {
            return;
        }

        if (_notes.Pitched(element, start, length, _attributes) is { } note && _struck.Add((start, note.Note)))
        {
            _measure.Notes.Add(_notes.WithTie(note));
        }

        if (!isTogether && element.Children("notations").Any(n => n.Has("fermata")))
        {
            _measure.Fermatas.Add(start);
        }
    }

    private void Move(XElement element, int direction)
    {
        if (NoteReader.Duration(element, _attributes.Divisions) is not { } length)
        {
            _remarks.Refuse(_places.Of(element), $"a {element.Name.LocalName} without a duration", "duration, a number above 0");
            return;
        }

        if (direction < 0 && length > _at)
        {
            _remarks.WarnOnce(_places.Of(element), "a backup goes back before the bar's beginning and is taken as far as that", "a duration of at most what stands before it");
            length = _at;
        }

        Advance(length * direction, element);
    }

    private void Advance(Beats length, XElement element)
    {
        _at += length;
        if (_at > LongestBar || _at.Denominator > SheetLimits.FinestPart)
        {
            _remarks.Refuse(
                _places.Of(element),
                _at > LongestBar ? $"a bar of more than {LengthWords.Quarters(LongestBar)}" : "notes that fall on no common grid",
                _at > LongestBar ? "a new measure before it" : $"places that are {SheetLimits.FinestPart}ths of a quarter or coarser");
            _at = Beats.Zero;
        }

        _measure.Length = _at > _measure.Length ? _at : _measure.Length;
    }

    // Several symbols before one note share it: so they are written where they change during a note (the MusicXML suite of
    // the LilyPond project, 71g).
    private void TakeHarmony(XElement element)
    {
        if (_before is { } before && before.Name.LocalName == "harmony" && !before.Has("offset") && !element.Has("offset"))
        {
            return;
        }

        var group = element.ElementsAfterSelf().TakeWhile(e => e.Name.LocalName == "harmony" && !e.Has("offset") && !element.Has("offset")).Prepend(element).ToArray();
        var read = new List<(ChordSymbol? Symbol, XElement From)>();
        foreach (var harmony in group.Where(h => h.Text("type") != "alternate"))
        {
            if (_harmony.Read(harmony, out var symbol) && (read.Count == 0 || read[^1].Symbol != symbol))
            {
                read.Add((symbol?.Moved(_attributes.TransposedFifths), harmony));
            }
        }

        var note = read.Count > 1 ? group[^1].ElementsAfterSelf().FirstOrDefault(e => e.Name.LocalName == "note" && !e.Has("grace")) : null;
        var shared = note is not null ? _notes.Length(note, _attributes.Divisions, _measure.Meter) : null;
        for (var i = 0; i < read.Count; i++)
        {
            var later = shared is { } length ? length * i / read.Count : Beats.Zero;
            Add(_at + Offset(element) + later, read[i].Symbol, read[i].From);
        }

        if (read.Count > 1)
        {
            _remarks.WarnOnce(_places.Of(element), "several chord symbols stand before one note and share its time", "an offset at each that begins later");
        }
    }

    private void Add(Beats at, ChordSymbol? symbol, XElement from)
    {
        at = at < Beats.Zero ? Beats.Zero : at;
        if (at.Denominator > SheetLimits.FinestPart)
        {
            _remarks.Refuse(_places.Of(from), "a chord symbol that falls on no common grid", $"places that are {SheetLimits.FinestPart}ths of a quarter or coarser");
            return;
        }

        _measure.Symbols.Add((at, symbol, _places.Of(from)));
    }

    private Beats Offset(XElement element)
    {
        var offset = Elements.Fraction(element.ChildText("offset") ?? element.Text("offset")) is { } parts ? NoteReader.Over(parts, _attributes.Divisions) : Beats.Zero;
        return offset.Denominator > SheetLimits.FinestPart ? Beats.Zero : offset;
    }
}
