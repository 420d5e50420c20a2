using Revoicer.Music;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Wishes;

/// <summary>Makes wishes of the words of their file. What is wrong is reported and left out, so that all problems come to light.</summary>
internal sealed class WishReader(TomlText toml, IReadOnlyCollection<string> figures, List<Problem> problems)
{
    // As many bars as a sheet may have, repeats unfolded; a metre with more beats is not written.
    private const int LastBar = 20_000;
    private const double LastBeat = 64;

    // More than a long sheet has chords would only cost time.
    private const int MostWishes = 1000;

    private const string None = "none";

    private const string Parts = "[[pin]], [[ban]], [[no-rolls]], [[leave-alone]] or [[phrase]]";

    private static readonly string[] Things = ["bass", "left-hand-top", "bell", "bells", "lowest", "figure"];

    private static readonly int[] Degrees = [1, 3, 5, 7];

    public PlayerWishes Read()
    {
        problems.AddRange(toml.Head.Words.Select(w => new Problem(toml.Head.PlaceOf(w), $"'{Quoted.Text(w)}' stands in no part", Parts)));
        var wishes = new List<Wish>();
        var phrases = new List<PhraseStart>();
        foreach (var part in toml.Sections)
        {
            switch (part)
            {
                case { Name: "pin" or "ban", IsOneOfMany: true }:
                    wishes.AddRange(ReadChord(part));
                    break;
                case { Name: "no-rolls", IsOneOfMany: true }:
                    wishes.AddRange(ReadPassage(part, new WishedThing.FigureNamed(WishedThing.Roll), isBan: true));
                    break;
                case { Name: "leave-alone", IsOneOfMany: true }:
                    wishes.AddRange(ReadPassage(part, new WishedThing.FigureNamed(WishedThing.Silence), isBan: false));
                    break;
                case { Name: "phrase", IsOneOfMany: true }:
                    phrases.AddRange(ReadPhrase(part));
                    break;
                default:
                    problems.Add(new Problem(
                        part.Where,
                        $"'{Quoted.Text(part.Name)}' is no part of a wishes file, or stands in single brackets",
                        Parts));
                    break;
            }
        }

        if (wishes.Count > MostWishes)
        {
            problems.Add(new Problem(wishes[MostWishes].Where, $"this is wish {MostWishes + 1}", $"at most {MostWishes} wishes"));
        }

        return new PlayerWishes(wishes.ToItems(), phrases.ToItems());
    }

    // Every word of a part but its place is a wish of its own.
    private IEnumerable<Wish> ReadChord(TomlSection part)
    {
        part.KnowsOnly(["bar", "beat", .. Things]);
        part.Needs("bar");
        var bar = Bar(part, "bar");
        var beat = part.Number("beat", 1, LastBeat, ", counted in beats of the metre");
        var things = Read(part).OfType<TomlWord<WishedThing>>().ToList();
        if (!part.Words.Any(Things.Contains))
        {
            problems.Add(new Problem(part.Where, $"this [[{part.Name}]] asks for nothing", "one of " + string.Join(", ", Things)));
        }

        return bar is null
            ? []
            : things.Select(t => new Wish(t.Where, new WishedPlace(bar.Value, bar.Value, beat?.Value), t.Value, part.Name == "ban")
            {
                WhereBar = part.LineOf("bar"),
                WhereBeat = part.LineOf(beat is null ? "bar" : "beat"),
            });
    }

    private IEnumerable<TomlWord<WishedThing>?> Read(TomlSection part)
    {
        yield return Thing(NoteOrNone(part, "bass"), note => new WishedThing.BassBell(note));
        yield return Thing(NoteOrNone(part, "left-hand-top"), note => new WishedThing.LeftHandTop(note));
        yield return Thing(Note(part.Text("bell")), note => new WishedThing.OneBell(note));
        yield return Bells(part);
        yield return Thing(Lowest(part), degree => new WishedThing.LowestTone(degree));
        yield return Thing(Named(part.Text("figure"), figures, "figure"), name => new WishedThing.FigureNamed(name));
    }

    private IEnumerable<Wish> ReadPassage(TomlSection part, WishedThing thing, bool isBan)
    {
        part.KnowsOnly("from", "to");
        part.Needs("from", "to");
        var from = Bar(part, "from");
        var to = Bar(part, "to");
        if (from is null || to is null)
        {
            yield break;
        }

        if (from.Value > to.Value)
        {
            problems.Add(new Problem(to.Where, $"the passage ends in bar {to.Value}, before it begins in bar {from.Value}", "a last bar not before the first"));
        }

        yield return new Wish(from.Where, new WishedPlace(from.Value, to.Value, null), thing, isBan) { WhereBar = part.LineOf("from"), WhereBeat = part.LineOf("from") };
    }

    private static IEnumerable<PhraseStart> ReadPhrase(TomlSection part)
    {
        part.KnowsOnly("bar");
        part.Needs("bar");
        return Bar(part, "bar") is { } bar ? [new PhraseStart(bar.Value, part.LineOf("bar"))] : [];
    }

    private static TomlWord<int>? Bar(TomlSection part, string word) => part.Whole(word, 0, LastBar, ", the bar's number in the report");

    private TomlWord<WishedThing>? Bells(TomlSection part)
    {
        if (part.Texts("bells") is not { } texts)
        {
            return null;
        }

        var notes = texts.Select(Note).OfType<TomlWord<WrittenNote>>().ToList();
        if (texts.Count == 0)
        {
            problems.Add(new Problem(part.PlaceOf("bells"), "'bells' names none", "at least one bell; figure = \"silent\" asks for silence"));
        }

        foreach (var twice in notes.GroupBy(n => n.Value).Where(g => g.Count() > 1))
        {
            problems.Add(new Problem(twice.Last().Where, $"{twice.Key} is named twice", "every bell once"));
        }

        return notes.Count == 0 ? null : new TomlWord<WishedThing>(
            new WishedThing.WholeVoicing(notes.Select(n => n.Value).Order().ToItems()), part.PlaceOf("bells"));
    }

    private TomlWord<int>? Lowest(TomlSection part)
    {
        var names = Degrees.Select(WishedThing.LowestTone.NameOf).ToArray();
        return Named(part.Text("lowest"), names, "tone of a chord that may lie lowest") is { } name
            ? new TomlWord<int>(Degrees[Array.IndexOf(names, name.Value)], name.Where)
            : null;
    }

    private TomlWord<string>? Named(TomlWord<string>? text, IReadOnlyCollection<string> names, string kind)
    {
        if (text is null || names.Contains(text.Value))
        {
            return text;
        }

        var nearest = NearestWord.To(text.Value, names) is { } word ? $"'{word}', perhaps; the names are " : "one of ";
        problems.Add(new Problem(text.Where, $"'{Quoted.Text(text.Value)}' is no {kind}", nearest + string.Join(", ", names)));
        return null;
    }

    private TomlWord<WrittenNote?>? NoteOrNone(TomlSection part, string word) => part.Text(word) switch
    {
        null => null,
        { Value: None } none => new TomlWord<WrittenNote?>(null, none.Where),
        var text => Note(text) is { } note ? new TomlWord<WrittenNote?>(note.Value, note.Where) : null,
    };

    private TomlWord<WrittenNote>? Note(TomlWord<string>? text)
    {
        if (text is null)
        {
            return null;
        }

        if (NoteSpelling.TryMidi(text.Value, out var midi))
        {
            return new TomlWord<WrittenNote>(WrittenNote.AtMidi(midi), text.Where);
        }

        problems.Add(new Problem(text.Where, $"'{Quoted.Text(text.Value)}' is no bell", "a note with its octave, \"C4\" (middle C) or \"F#3\""));
        return null;
    }

    private static TomlWord<WishedThing>? Thing<T>(TomlWord<T>? word, Func<T, WishedThing> thing) =>
        word is null ? null : new TomlWord<WishedThing>(thing(word.Value), word.Where);
}
