using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Writing.Text;

/// <summary>What the first page of every report says of a piece as it is played.</summary>
internal sealed class PieceWords(IPlayedPiece piece)
{
    // More changes of speed than these (a piece with many fermatas) would bury the rest of the page.
    private const int TempiNamed = 6;

    private readonly KeySpelling _notes = new(piece.WrittenKey);
    private readonly PlaceNames _places = new(piece);

    /// <summary>The title; something in its place where it is blank.</summary>
    public string Title => piece.Title.Trim().Length == 0 ? "Without a title" : piece.Title;

    /// <summary>The instrument.</summary>
    public string Tower()
    {
        var tower = piece.Tower;
        var missing = tower.Missing.Count == 0 ? "" : $", without {Sentences.List([.. tower.Missing.Select(_notes.Of)])}";
        var measured = tower.MeasuredBells == 0
            ? "none is measured, so all are taken to sound as the default bell"
            : $"{tower.MeasuredBells} of them measured";
        return $"{tower.Name}: {Sentences.Count(tower.Bells, "bell", "bells")} from {_notes.Of(tower.Lowest)} to {_notes.Of(tower.Highest)}{missing}; {measured}";
    }

    /// <summary>The key read and the key heard.</summary>
    public string Key()
    {
        var higher = Sentences.Higher(piece.Tower.Transposition);
        return (piece.WrittenKey, piece.SoundingKey) switch
        {
            ({ } written, { } sounding) => $"you read {written}; it is heard {higher}, in {sounding}",
            _ => $"the sheet names none; what you read is heard {higher}",
        };
    }

    /// <summary>The speeds.</summary>
    public string Tempo()
    {
        var changes = piece.Tempi.Changes;
        var assumed = piece.TempoIsAssumed ? " (assumed: neither the sheet nor you named one)" : "";
        var later = changes.Skip(1).Take(TempiNamed - 1).Select(c => $"; {c.Tempo} from {_places.Of(c.From)} on");
        var more = changes.Count > TempiNamed ? $"; {changes.Count - TempiNamed} more changes after that" : "";
        return changes[0].Tempo + assumed + string.Concat(later) + more;
    }

    /// <summary>How long it is.</summary>
    public string Length()
    {
        var last = piece.Bars[^1];
        var end = piece.Tempi.At(last.Start + last.Length) + piece.Shift;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{Bars()} as heard, {end.Value:0.0} s, and two bars for the last bells to ring");
    }

    // A pickup is numbered 0 and is no bar of its own.
    private string Bars()
    {
        var whole = piece.Bars.Count(b => b.Number > 0);
        var bars = Sentences.Count(whole, "bar", "bars");
        return whole == piece.Bars.Count ? bars : $"a pickup and {bars}";
    }

    /// <summary>The pedals used.</summary>
    public string Pedals()
    {
        var pedalled = piece.Strokes.Where(s => s.IsPedal).Select(s => s.Note).ToArray();
        return pedalled.Length > 0
            ? $"{_notes.Of(pedalled.Min())} to {_notes.Of(pedalled.Max())}, {Sentences.Count(pedalled.Length, "stroke", "strokes")}"
            : "none; the feet rest";
    }

    /// <summary>The passage with most strokes on heavy bells.</summary>
    public string Heaviest(Seconds from, int strokes) => strokes == 0
        ? "no bell below middle C (C4) is struck"
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{Sentences.Count(strokes, "stroke", "strokes")} on bells below middle C (C4) in the 10 s from {from.Value:0.0} s on ({_places.BarOf(from)})");

    /// <summary>The bells used.</summary>
    public string Bells(Items<WrittenNote> used) => $"{used.Count} of {piece.Tower.Bells}: {_notes.Of(used)}";
}
