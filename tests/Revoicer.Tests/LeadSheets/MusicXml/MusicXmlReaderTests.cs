using System.Text;
using Revoicer.Chords;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Tests.Writing.MusicXml;
using Xunit;
using static Revoicer.Tests.LeadSheets.MusicXml.Score;

namespace Revoicer.Tests.LeadSheets.MusicXml;

public sealed class MusicXmlReaderTests
{
    [Fact]
    public void A_tune_with_its_chords_is_read()
    {
        var sheet = Sheet(Of(
            Attributes + "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>96</per-minute></metronome></direction-type></direction>"
                + Chord("B-", "minor-seventh", "<bass><bass-step>A</bass-step><bass-alter>-1</bass-alter></bass>") + Note("B-4", 4) + Note("r", 2) + Note("E-5", 2),
            Chord("E-") + Note("D5", 8)));
        Assert.Equal("1.0 Bbm7/Ab; 2.0 Eb", Symbols(sheet));
        Assert.Equal("0 Bb4 2; 3 Eb5 1; 4 D5 4", Tune(sheet));
        Assert.Equal(new Tempo(Beats.OfQuarters(1), 96), sheet.Tempo);
        Assert.Equal("C major", sheet.Key.ToString());
        Assert.Equal("quay", sheet.Title);
    }

    [Fact]
    public void Every_kind_of_the_standard_has_the_degrees_of_its_definition()
    {
        // The 33 kinds of MusicXML 4.0, ../shared/reference/musicxml-kinds.tsv.
        foreach (var row in SharedFiles.LinesOrSkip("reference", "musicxml-kinds.tsv").Skip(1).Select(l => l.Split('\t')))
        {
            var read = Accepted(Of(Attributes + Chord("C", row[0]) + Note("C5")));
            var symbol = read.Value.Bars[0].Chords[0].Symbol;
            Assert.Equal(row[3], symbol is null ? "" : string.Join(' ', symbol.Tones.Select(t => t.Degree)));
            Assert.Equal(row[3].Length == 0 && row[0] != "none", read.Warnings.Count > 0);
            if (symbol is not null)
            {
                var again = Assert.IsType<Revoicer.Text.Reading<ChordText>.Accepted>(ChordSymbolReader.Read(symbol.ToString(), Revoicer.Text.Place.WholeFile("")));
                Assert.Equal(symbol.Tones, Assert.IsType<ChordText.Chord>(again.Value).Symbol.Tones);
            }
        }
    }

    [Theory]
    [InlineData("dominant", "9 -1 add", "1 3 5 b7 b9", "C7b9")]
    [InlineData("dominant", "5 1 alter", "1 3 #5 b7", "C+7")]
    [InlineData("major", "7 1 add", "1 3 5 7", "Cmaj7")]
    [InlineData("major", "7 0 add", "1 3 5 b7", "C7")]
    [InlineData("suspended-fourth", "7 0 add", "1 4 5 b7", "C7sus4")]
    [InlineData("dominant-13th", "11 0 subtract", "1 3 5 b7 9 13", "C13")]
    [InlineData("dominant-ninth", "9 -1 alter,9 1 add", "1 3 5 b7 b9 #9", "C7b9#9")]
    [InlineData("major", "3 0 subtract", "1 5", "C5")]
    [InlineData("other", "3 -1 add,5 -1 add,7 0 add", "1 b3 b5 b7", "Cm7b5")]
    public void Degrees_are_added_altered_and_subtracted(string kind, string changes, string degrees, string symbol)
    {
        // degree-alter of an added degree is counted from the dominant chord, so 7 is the minor seventh (MusicXML 4.0).
        var more = string.Concat(changes.Split(',').Select(c => c.Split(' ')).Select(c => Degree(int.Parse(c[0]), int.Parse(c[1]), c[2])));
        var read = Sheet(Of(Attributes + Chord("C", kind, more) + Note("C5"))).Bars[0].Chords[0].Symbol!;
        Assert.Equal((degrees, symbol), (string.Join(' ', read.Tones.Select(t => t.Degree)), read.ToString()));
    }

    [Fact]
    public void Degrees_win_over_the_text_beside_them()
    {
        Assert.Equal("1.0 C7b9", Symbols(Sheet(Of(Attributes + Chord("C", "dominant", Degree(9, -1, "add"), "7") + Note("C5")))));
        Assert.Equal("1.0 CMI7", Symbols(Sheet(Of(Attributes + Chord("C", "minor-seventh", "", "MI7") + Note("C5")))));
        Assert.Equal("1.0 C7alt", Symbols(Sheet(Of(Attributes + Chord("C", "other", "", "7alt") + Note("C5")))));
    }

    [Theory]
    [InlineData("<harmony><root><root-step>F</root-step></root><kind>major</kind><offset>4</offset></harmony>", "1.0 C; 1.2 F")]
    [InlineData("<harmony><root><root-step>F</root-step></root><kind>none</kind><offset>4</offset></harmony>", "1.0 C; 1.2 -")]
    [InlineData("<direction><direction-type><words>N.C.</words></direction-type><offset>4</offset></direction>", "1.0 C; 1.2 -")]
    [InlineData("<harmony><root><root-step>F</root-step></root><kind>major</kind></harmony>", "1.0 C; 1.2 F")]
    [InlineData("<harmony type=\"alternate\"><root><root-step>F</root-step></root><kind>major</kind></harmony>", "1.0 C")]
    [InlineData("<harmony><root><root-step>C</root-step></root><kind>major</kind></harmony>", "1.0 C")]
    public void Several_symbols_before_one_note_have_their_places(string second, string chords) =>
        Assert.Equal(chords, Symbols(Sheet(Of(Attributes + Chord("C") + second + Note("C5")))));

    [Fact]
    public void The_top_voice_of_the_first_part_has_the_tune_unless_another_is_asked_for()
    {
        string Two(string one, string two) => Attributes + Note(one, 8, "<voice>1</voice><staff>1</staff>")
            + "<backup><duration>8</duration></backup>" + Note(two, 8, "<voice>2</voice><staff>1</staff>") + "<backup><duration>8</duration></backup>" + Note("C3", 8, "<voice>5</voice><staff>2</staff>");
        var text = OfParts(Part("P1", Two("G5", "E5")), Part("P2", Attributes + Chord("C") + Note("A4")));
        Assert.Equal("0 G5 4", Tune(Sheet(text)));
        Assert.Equal("0 E5 4", Tune(Sheet(text, "2")));
        Assert.Equal("0 C3 4", Tune(Sheet(text, "5")));
        Assert.Equal("0 A4 4", Tune(Sheet(text, "P2")));
        Assert.Equal("0 A4 4", Tune(Sheet(text, "Chords")));
        Assert.Equal("1.0 C", Symbols(Sheet(text)));
        Assert.Contains("those of another part are taken", Accepted(text).Warnings.Single().Found, StringComparison.Ordinal);
        var problem = Problem(text, "9");
        Assert.Equal(("the score has no voice '9'", "a voice of the first part (1, 2, 5) or a part (Tune, Chords)"), (problem.Found, problem.Expected));
    }

    // MusicXML 4.0, "tied": a tie that joins two notes starts at one and stops at the other; one that is attached to a single
    // note has both a start and a stop there, and leads into or out of a repeated section.
    [Theory]
    [InlineData("0 A4 8", "start", "", "stop", "")]
    [InlineData("0 A4 4; 4 A4 4", "start", "", "", "")]
    [InlineData("0 A4 4; 4 A4 4", "", "", "stop", "")]
    [InlineData("0 A4 4; 4 A4 4", "start stop", "", "", "")]
    [InlineData("0 A4 8", "start stop", "", "stop", "")]
    [InlineData("0 A4 12", "start", "", "stop start", "", "stop", "")]
    [InlineData("0 A4 4; 4 A4 4; 8 A4 4", "", "back", "", "")]
    [InlineData("0 A4 8; 8 A4 4", "start stop", "back", "", "")]
    [InlineData("0 A4 8; 8 A4 4", "stop start", "back", "", "")]
    [InlineData("0 A4 8; 8 A4 8", "start", "[1 back", "stop", "")]
    [InlineData("0 A4 8; 8 A4 8", "start", "[1 back", "start stop", "")]
    [InlineData("0 A4 8; 8 A4 4; 12 A4 4", "start", "[1 back", "", "")]
    [InlineData("0 A4 4; 4 A4 4; 8 A4 8", "", "[1 back", "start stop", "")]
    public void Ties_join_what_they_are_marked_at(string tune, params string[] notes)
    {
        const string back = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";
        var bars = new List<string>();
        for (var i = 0; i < notes.Length; i += 2)
        {
            var music = Note("A4", 8, string.Concat(notes[i].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => $"<tie type=\"{t}\"/>")));
            bars.Add(music + (notes[i + 1] == "back" ? back : ""));
            if (notes[i + 1] == "[1 back")
            {
                // A first ending that the note before it is tied into where that is tied at all.
                bars.Add(Ending(1) + Note("A4", 8, notes[i].Length > 0 ? "<tie type=\"stop\"/>" : "") + back);
                notes[i + 3] = "2";
            }
            else if (notes[i + 1] == "2")
            {
                bars[^1] = Ending(2) + bars[^1];
            }
        }

        bars[0] = Attributes + bars[0];
        Assert.Equal(tune, Tune(Sheet(Of([.. bars]))));

        static string Ending(int number) => $"<barline location=\"left\"><ending number=\"{number}\" type=\"start\"/></barline>";
    }

    [Fact]
    public void Ties_tuplets_chords_grace_and_cue_notes_are_taken_as_they_sound()
    {
        var triplet = "<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>";
        var sheet = Sheet(Of(
            Attributes.Replace("<divisions>2", "<divisions>3", StringComparison.Ordinal)
                + Note("C5", 2, triplet) + Note("D5", 2, triplet) + Note("E5", 2, triplet)
                + "<note><grace/><pitch><step>B</step><octave>4</octave></pitch></note>" + Note("G4", 3) + Note("E5", 3, before: "<chord/>")
                + "<note><cue/><pitch><step>B</step><octave>4</octave></pitch><duration>3</duration></note>",
            Note("A4", 6, "<tie type=\"start\"/>") + Note("A4", 6, "<tie type=\"stop\"/><tie type=\"start\"/>"),
            Note("A4", 3, "<tie type=\"stop\"/>") + Note("A4", 9)));
        Assert.Equal("0 C5 2/3; 2/3 D5 2/3; 4/3 E5 2/3; 2 G4 1; 2 E5 1; 4 A4 5; 9 A4 3", Tune(sheet));
    }

    [Fact]
    public void Divisions_key_and_metre_change()
    {
        var sheet = Sheet(Of(
            Attributes + Note("C5"),
            "<attributes><divisions>12</divisions><key><fifths>-3</fifths><mode>minor</mode></key><time><beats>3+2</beats><beat-type>8</beat-type></time></attributes>" + Note("E-5", 30),
            "<attributes><time><beats>2</beats><beat-type>4</beat-type><beats>3</beats><beat-type>8</beat-type></time></attributes>" + Note("G5", 42)));
        Assert.Equal(["4/4", "5/8", "7/8"], sheet.Bars.Select(b => b.Meter.ToString()));
        Assert.Equal("0 C5 4; 4 Eb5 5/2; 13/2 G5 7/2", Tune(sheet));
        Assert.Equal("C minor", sheet.Bars[1].Key.ToString());
    }

    [Theory]
    [InlineData(-1, -2, "0 Bb4 4", "1.0 Bb7", "Bb major")]
    [InlineData(-5, -9, "0 Eb4 4", "1.0 Eb7", "Eb major")]
    [InlineData(0, 12, "0 C5 4", "1.0 C7", "C major")]
    [InlineData(1, 2, "0 D5 4", "1.0 D7", "D major")]
    public void A_transposing_part_is_taken_as_it_sounds_but_for_octaves(int diatonic, int chromatic, string tune, string chords, string key)
    {
        var transpose = $"<transpose><diatonic>{diatonic}</diatonic><chromatic>{chromatic}</chromatic></transpose></attributes>";
        var sheet = Sheet(Of(Attributes.Replace("</attributes>", transpose, StringComparison.Ordinal) + Chord("C", "dominant") + Note("C5")));
        Assert.Equal((tune, chords, key), (Tune(sheet), Symbols(sheet), sheet.Key.ToString()));
    }

    [Theory]
    [InlineData("0", "yes")]
    [InlineData("1", "no")]
    [InlineData("X1", "no")]
    public void A_pickup_is_bar_0_however_it_is_numbered(string number, string isImplicit)
    {
        var sheet = Sheet(Of($"<measure number=\"{number}\" implicit=\"{isImplicit}\">{Attributes}{Note("G4", 2)}</measure>", Note("C5"), Note("D5")));
        Assert.Equal("0 1 2", Heard(sheet));
        Assert.Equal(Beats.OfQuarters(3), sheet.Bars[0].Offset);
    }

    [Fact]
    public void A_score_told_bar_by_bar_is_the_same()
    {
        var timewise = $"<score-timewise version=\"3.1\"><part-list/><measure number=\"1\"><part id=\"P1\">{Attributes}{Chord("C")}{Note("C5")}</part></measure><measure number=\"2\"><part id=\"P1\">{Note("D5")}</part></measure></score-timewise>";
        Assert.Equal("0 C5 4; 4 D5 4", Tune(Sheet(timewise)));
        Assert.Equal("1.0 C; 2.0 C", Symbols(Sheet(timewise)));
    }

    [Fact]
    public void The_demo_is_valid_and_read_without_a_warning()
    {
        var file = File.ReadAllBytes(RepositoryFiles.All("leadsheets-demo", "*.musicxml").Single());
        var read = Accepted(file);
        Assert.Empty(read.Warnings);
        Assert.Equal("0 1 2 3 4 5 6 7 8 1 2 3 4 5 6 7 9 10 11 12 13 0 1 2 3 4 5 6 7 9", Heard(read.Value));
        Assert.Equal("6.0 Bb; 6.2 Bbm", string.Join("; ", Symbols(read.Value).Split("; ").Where(s => s.StartsWith('6'))));
        Assert.Empty(MusicXmlSchema.Faults(file));
    }

    [Fact]
    public void A_compressed_file_is_read_and_a_broken_container_warns()
    {
        var score = Encoding.UTF8.GetBytes(Of(Attributes + Note("C5")));
        var container = "<container><rootfiles><rootfile full-path=\"in/tune.xml\"/></rootfiles></container>"u8.ToArray();
        Assert.Empty(Accepted(Zip(("META-INF/container.xml", container), ("in/tune.xml", score), ("other.xml", "x"u8.ToArray()))).Warnings);
        foreach (var broken in new[] { "<container><rootfi"u8.ToArray(), "<container/>"u8.ToArray(), "<container><rootfiles><rootfile full-path=\"../../tune.xml\"/></rootfiles></container>"u8.ToArray(), [] })
        {
            var warning = Assert.Single(Accepted(Zip(("META-INF/container.xml", broken), ("tune.musicxml", score))).Warnings);
            Assert.Contains("'tune.musicxml' is read, the only one inside", warning.Found, StringComparison.Ordinal);
        }

        Assert.Single(Accepted(Zip(("tune.musicxml", score))).Warnings);
        Assert.Contains("several are inside", Problem(Zip(("a.xml", score), ("b.xml", score))).Found, StringComparison.Ordinal);
    }
}
