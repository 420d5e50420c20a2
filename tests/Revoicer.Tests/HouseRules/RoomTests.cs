using Xunit;

namespace Revoicer.Tests.HouseRules;

public sealed class RoomTests
{
    [Fact]
    public void Every_room_uses_only_rooms_it_may_use() => Assert.Empty(Uses.WrongArrows(Rooms.MayUse));

    [Fact]
    public void Every_room_of_the_library_is_in_the_table() =>
        Assert.Empty(Uses.RoomsFound().Except(Rooms.MayUse.Keys));

    [Fact]
    public void Rooms_with_a_door_are_entered_by_it() => Assert.Empty(Uses.PastTheDoor(Rooms.Doors));

    [Fact]
    public void The_table_has_no_circle()
    {
        // A room stands below those that use it, so each row names only rows above it.
        var above = new HashSet<string>();
        foreach (var (room, used) in Rooms.MayUse)
        {
            Assert.Subset(above, used.ToHashSet());
            above.Add(room);
        }
    }

    [Fact]
    public void Other_libraries_are_known_only_where_they_belong() => Assert.Empty(Uses.StrayLibraries(Rooms.Libraries));

    [Fact]
    public void Console_clock_environment_and_files_are_left_to_the_caller() => Assert.Empty(Uses.Of(Rooms.Machine));

    [Fact]
    public void A_wrong_arrow_is_found()
    {
        var stricter = new Dictionary<string, string[]>(Rooms.MayUse) { ["Music"] = [] };

        var found = Uses.WrongArrows(stricter);

        Assert.Contains("Music -> Values: Revoicer.Music.Tempo uses Revoicer.Values.Seconds", found);
        Assert.DoesNotContain(found, f => f.StartsWith("Chords -> Music", StringComparison.Ordinal));
    }

    [Fact]
    public void A_use_inside_a_method_body_is_found()
    {
        // TowerFile has no field, parameter or result of that type.
        var stricter = new Dictionary<string, string[]>(Rooms.MayUse) { ["Text"] = [], ["Bells"] = ["Music"] };

        Assert.Contains(
            "Bells -> Text: Revoicer.Bells.TowerFile uses Revoicer.Text.TomlText",
            Uses.WrongArrows(stricter));
    }

    [Fact]
    public void A_use_past_the_door_is_found() => Assert.Contains(
        "Revoicer.Voicings.CandidateSearch uses Revoicer.Playing.Reach",
        Uses.PastTheDoor(new Dictionary<string, string[]> { ["Playing"] = ["Limb", "Stroke"] }));

    [Theory]
    [InlineData("Tomlyn", "Revoicer.Music", "Revoicer.Text.TomlText uses Tomlyn.Parsing.SyntaxParser")]
    [InlineData("NAudio", "Revoicer.LeadSheets.Midi", "Revoicer.Smf.SmfWriting uses NAudio.Midi.MidiFile")]
    [InlineData("ScottPlot", "Revoicer.Clashes", "Revoicer.Pictures.Paper uses ScottPlot.Plot")]
    [InlineData("SkiaSharp", "Revoicer.Clashes", "Revoicer.Pictures.Lettering uses SkiaSharp.SKFontManager")]
    [InlineData("System.Text.Json", "Revoicer.Text", "Revoicer.Writing.Json.JsonCheck uses System.Text.Json.Utf8JsonReader")]
    public void A_library_in_the_wrong_place_is_found(string library, string place, string expected) =>
        Assert.Contains(expected, Uses.StrayLibraries(new Dictionary<string, string[]> { [library] = [place] }));

    [Fact]
    public void A_forbidden_type_is_found() =>
        Assert.Contains("Revoicer.Values.Decibels uses System.Math", Uses.Of(["System.Math"]));

    [Fact]
    public void A_use_inside_a_sequence_or_a_lambda_is_found()
    {
        // Checker.Moves yields; SlotCutting.ToSlot makes hearings in a lambda.
        Assert.Contains(Uses.Of(["Revoicer.Playing.MoveLaw"]), u => u.StartsWith("Revoicer.Playing.Checker", StringComparison.Ordinal));
        Assert.Contains(Uses.Of(["Revoicer.Voicings.Hearing"]), u => u.StartsWith("Revoicer.Voicings.SlotCutting", StringComparison.Ordinal));
    }
}
