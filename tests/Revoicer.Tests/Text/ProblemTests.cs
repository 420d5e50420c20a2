using Revoicer.Text;
using Xunit;

namespace Revoicer.Tests.Text;

public class ProblemTests
{
    [Fact]
    public void A_problem_shows_its_place_and_the_line_with_carets() => Assert.Equal(
        "quay.chords:3:5: 'H7' is no chord; expected a root from A to G\n    | C H7 |\n        ^^\n",
        At("| C H7 |", 5, 2));

    [Fact]
    public void Tabs_before_the_carets_stay_tabs() => Assert.Equal(
        "quay.chords:3:2: 'H7' is no chord; expected a root from A to G\n    \tH7\n    \t^^\n",
        At("\tH7", 2, 2));

    [Fact]
    public void Of_a_long_line_the_part_around_is_shown()
    {
        var line = new string('a', 300) + "H7" + new string('b', 300);
        Assert.Equal(
            "quay.chords:3:301: 'H7' is no chord; expected a root from A to G\n"
            + $"    ...{new string('a', 40)}H7{new string('b', 58)}...\n    {new string(' ', 43)}^^\n",
            At(line, 301, 2));
        Assert.EndsWith($"    ...{new string('b', 100)}\n    {new string(' ', 102)}^\n", At(line, 602, 1), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_as_a_whole_has_no_line() => Assert.Equal(
        "quay.chords: the file is empty; expected bars\n",
        new Problem(Place.WholeFile("quay.chords"), "the file is empty", "bars").ToString());

    [Fact]
    public void What_a_terminal_would_obey_is_shown_and_the_carets_stand_under_what_is_meant() => Assert.Equal(
        "quay.chords:3:3: 'H7' is no chord; expected a root from A to G\n    \\u001b H\\u202e7 x\n           ^^^^^^^^\n",
        At("\u001b H\u202e7 x", 3, 3));

    [Fact]
    public void Names_and_words_from_outside_stay_on_their_line() => Assert.Equal(
        "ebb\\u000aquay.chords: 'a\\u000ab' is no word; expected 'c\\u001bd'\n",
        new Problem(Place.WholeFile("ebb\nquay.chords"), "'a\nb' is no word", "'c\u001bd'").ToString());

    [Law]
    public void Any_place_in_any_line_can_be_shown(FsCheck.NonEmptyString line, FsCheck.PositiveInt column, FsCheck.PositiveInt length)
    {
        var text = line.Get.ReplaceLineEndings(" ");
        Assert.EndsWith("^\n", At(text, Math.Min(column.Get, text.Length), length.Get), StringComparison.Ordinal);
    }

    private static string At(string line, int column, int length) =>
        new Problem(new Place("quay.chords", 3, column, length, line), "'H7' is no chord", "a root from A to G").ToString();
}
