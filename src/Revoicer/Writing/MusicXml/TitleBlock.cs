using System.Globalization;
using Revoicer.Arrangements;
using Revoicer.Music;
using Revoicer.Writing.Text;

namespace Revoicer.Writing.MusicXml;

/// <summary>What stands above the music: title, bells needed, pedals, transposition, key, sound.</summary>
/// <param name="xml">The document.</param>
/// <param name="arrangement">The arrangement.</param>
internal sealed class TitleBlock(XmlText xml, Arrangement arrangement)
{
    private readonly KeySpelling _notes = new(arrangement.WrittenKey);

    /// <summary>The document's head up to the list of parts.</summary>
    public void Write()
    {
        var title = arrangement.Title.Trim().Length == 0 ? "Without a title" : arrangement.Title;
        xml.Element("work", () => xml.Text("work-title", title));
        xml.Element("identification", Identification);
        Credit("title", title, "center", "20");
        Credit("subtitle", $"for {arrangement.Tower.Name}; sound: {arrangement.Sound}", "center", "12");
        Credit("lyricist", $"{Bells()}\n{Pedals()}", "left", "10");
        Credit("composer", $"{Pitch()}\n{Key()}", "right", "10");
        Credit("rights", HowToRead, "center", "9");
    }

    // Stems and signs as they are used here.
    private const string HowToRead =
        "Stems up: right hand or foot; down: left. Roll: struck upward, the last on the beat or just before the tune.";

    private void Identification()
    {
        xml.Element("encoding", () =>
        {
            xml.Text("software", "Revoicer");
            foreach (var element in new[] { "accidental", "beam", "stem" })
            {
                xml.Empty("supports", "element", element, "type", "yes");
            }
        });
        xml.Element("miscellaneous", () =>
        {
            Field("tower", arrangement.Tower.Name);
            Field("bells", Bells());
            Field("pedals", Pedals());
            Field("pitch", Pitch());
            Field("key", Key());
            Field("sound", arrangement.Sound);
            Field("reading", HowToRead);
        });
    }

    private void Field(string name, string text) => xml.Text("miscellaneous-field", text, "name", name);

    private void Credit(string type, string text, string justify, string size) => xml.Element(
        "credit",
        () =>
        {
            xml.Text("credit-type", type);
            xml.Text("credit-words", text, "justify", justify, "font-size", size);
        },
        "page",
        "1");

    private string Bells()
    {
        var bells = arrangement.Strokes.Select(s => s.Note).Distinct().Order().ToArray();
        return bells.Length == 0
            ? "no bell is struck"
            : string.Create(CultureInfo.InvariantCulture, $"{Sentences.Count(bells.Length, "bell", "bells")} from {_notes.Of(bells[0])} to {_notes.Of(bells[^1])}");
    }

    private string Pedals()
    {
        var pedals = arrangement.Strokes.Where(s => s.IsPedal).Select(s => s.Note).ToArray();
        return pedals.Length == 0 ? "no pedals" : $"pedals from {_notes.Of(pedals.Min())} to {_notes.Of(pedals.Max())}";
    }

    private string Pitch() => $"sounds {Sentences.Higher(arrangement.Tower.Transposition)}";

    private string Key() => (arrangement.WrittenKey, arrangement.SoundingKey) switch
    {
        ({ } written, { } sounding) => $"written in {written}, heard in {sounding}",
        _ => "the sheet names no key",
    };
}
