using Xunit;

namespace Revoicer.Cli.Tests.Drafts;

public sealed class DraftWishesTests : IDisposable
{
    private const string Sheet = "title: Two Buoys\nkey: C\ntime: 4/4\ntempo: 84\n|: C | G7 :| Am / F / | C ||\n";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task Wishes_are_kept_and_told()
    {
        var ran = await Draft("[[pin]]\nbar = 2\nbass = \"B3\"\n[[no-rolls]]\nfrom = 1\nto = 4\n[[phrase]]\nbar = 3\n");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains($"\nwishes kept: 3, told in {_scratch.At("first")}.txt\n", ran.Output, StringComparison.Ordinal);
        Assert.Contains(
            "You wished for, and have:\n  - bar 2: the bass on B3\n  - bars 1 to 4: no rolls\n  - a phrase begins in bar 3\n",
            File.ReadAllText(_scratch.At("first.txt")),
            StringComparison.Ordinal);
        Assert.Contains(
            "\"wishes\": [\n    \"bar 2: the bass on B3\",\n    \"bars 1 to 4: no rolls\",\n    \"a phrase begins in bar 3\"\n  ]",
            File.ReadAllText(_scratch.At("first.json")),
            StringComparison.Ordinal);
    }

    // The harbour tower goes from C3 to C7 without C#3 and D#3; its pedals end at G4.
    [Theory]
    [InlineData("bar = 2\nbass = \"G2\"", "w.toml:3:8: bar 2: the bass on G2 cannot be had (G7 at bar 2 beat 1): Merrowhaven Harbour Tower has no bell on G2, its compass goes from C3 to C7; expected G3, the nearest that can be played there\n")]
    [InlineData("bar = 2\nbass = \"G5\"", "w.toml:3:8: bar 2: the bass on G5 cannot be had (G7 at bar 2 beat 1): no foot plays G5, the pedals go from C3 to G4; expected G4, the nearest that can be played there\n")]
    [InlineData("bar = 2\nbell = \"C#3\"", "w.toml:3:8: bar 2: C#3 among the bells cannot be had (G7 at bar 2 beat 1): Merrowhaven Harbour Tower has no bell on C#3; expected D3, the nearest that can be played there\n")]
    [InlineData("bar = 2\nleft-hand-top = \"E5\"", "w.toml:3:17: bar 2: E5 on top in the left hand cannot be had (G7 at bar 2 beat 1): E5 is no tone of G7; expected F5, the nearest that can be played there\n")]
    [InlineData("bar = 1\nlowest = \"seventh\"", "w.toml:3:10: bar 1: the seventh lowest cannot be had (C at bar 1 beat 1): C has no seventh; expected a tone that can lie lowest there: the root, the third, the fifth\n")]
    [InlineData("bar = 2\nbells = [\"G3\", \"B4\", \"F5\", \"D6\"]", "w.toml:3:9: bar 2: the bells G3 B4 F5 D6 and no others cannot be had (G7 at bar 2 beat 1): one hand is to span B4 to F5 (limit hand_span); expected ")]
    [InlineData("bar = 4\nfigure = \"broken\"", "w.toml:3:10: bar 4: the figure 'broken' cannot be had (C at bar 4 beat 1): the last chord is struck together, rolled or after its bass, and rings; expected one of the figures that can be played there: silent, together, rolled, bass first\n")]
    [InlineData("bar = 3\nbeat = 3\nfigure = \"afterbeats\"", "w.toml:4:10: bar 3 beat 3: the figure 'afterbeats' cannot be had (F at bar 3 beat 3): it wants a bass bell and the hands, a strong beat, and two weak beats after it; expected one of the figures")]
    [InlineData("bar = 2\nbass = \"B3\"\nlowest = \"root\"", "w.toml:3:8: no voicing of G7 meets these together: bar 2: the bass on B3 (line 3); bar 2: the root lowest (line 4); expected one of these wishes left out\n")]
    public async Task A_wish_that_cannot_be_met_is_told_with_what_can(string pin, string sentence)
    {
        var ran = await Draft("[[pin]]\n" + pin + "\n");
        Assert.Equal((1, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith(_scratch.At(sentence), ran.Error, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords", "w.toml"], _scratch.Names());
    }

    [Theory]
    [InlineData("bar = 9", "w.toml:2:1: the sheet has no bar 9; expected a bar from 1 to 4, as the report numbers them\n")]
    [InlineData("bar = 3\nbeat = 2", "w.toml:3:1: no chord begins at bar 3 beat 2; expected one of the beats of bar 3 with a chord: 1, 3\n")]
    [InlineData("bar = 2\nbeat = 1.5", "w.toml:3:1: no chord begins at bar 2 beat 1.5; expected beat 1, the only one of bar 2 with a chord\n")]
    [InlineData("bar = 2\nvoice = 3", "w.toml:3:1: 'voice' is no word of this part; expected one of bar, beat, bass, left-hand-top, bell, bells, lowest, figure\n")]
    public async Task A_wish_that_leads_nowhere_is_a_problem_of_the_file(string pin, string sentence)
    {
        var ran = await Draft("[[pin]]\n" + pin + "\nbass = \"C3\"\n");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith(_scratch.At(sentence), ran.Error, StringComparison.Ordinal);
        Assert.Equal(["buoys.chords", "w.toml"], _scratch.Names());
    }

    [Fact]
    public async Task A_bar_that_is_not_there_is_marked_on_its_own_line_and_once()
    {
        var ran = await Draft("[[pin]]\nbass = \"C3\"\nbar = 99\nlowest = \"root\"\n[[phrase]]\nbar = 98\n");
        Assert.Equal(
            _scratch.At("w.toml:3:1: the sheet has no bar 99; expected a bar from 1 to 4, as the report numbers them\n    bar = 99\n    ^^^^^^^^\n")
            + _scratch.At("w.toml:6:1: the sheet has no bar 98; expected a bar from 1 to 4, as the report numbers them\n    bar = 98\n    ^^^^^^^^\n"),
            ran.Error);
    }

    [Fact]
    public async Task Other_bells_and_a_file_of_wishes_are_counted_apart()
    {
        var ran = await Draft("[[phrase]]\nbar = 3\n", "--another", "1");
        Assert.Contains("\nwishes kept: 1, told in ", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bell_too_near_the_tune_is_told_with_the_octave_of_the_tune()
    {
        var sheet = _scratch.Put("ebb.abc", "X:1\nT:Ebb\nM:4/4\nL:1/4\nQ:1/4=84\nK:C\n\"C\"E,4|\"C\"c''4|]\n");
        var ran = await Ran.Of("draft", sheet, "--wishes", _scratch.Put("w.toml", "[[pin]]\nbar = 1\nbell = \"G3\"\n"), "--out", _scratch.At("first"));
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains("no voicing of C that can be played below the tune has it (the tune lies in its written octave)", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_wishes_that_cannot_be_met_are_told_at_once()
    {
        var ran = await Draft("[[pin]]\nbar = 2\nbass = \"G2\"\n[[pin]]\nbar = 1\nlowest = \"seventh\"\n");
        Assert.Equal(2, ran.Error.Split("cannot be had").Length - 1);
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_told()
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--wishes", _scratch.At("no.toml"), "--out", _scratch.At("first"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("no.toml: cannot be opened: there is no such file", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_wishes_file_is_never_written_to()
    {
        var wishes = _scratch.Put("first.json", "[[phrase]]\nbar = 3\n");
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--wishes", wishes, "--out", _scratch.At("first"), "--force");
        Assert.Equal(3, ran.ExitCode);
        Assert.Equal("[[phrase]]\nbar = 3\n", File.ReadAllText(wishes));
    }

    [Fact]
    public async Task Another_answer_has_other_bells()
    {
        var sheet = _scratch.Put("buoys.chords", Sheet);
        Assert.Equal(0, (await Ran.Of("draft", sheet, "--out", _scratch.At("first"))).ExitCode);
        var ran = await Ran.Of("draft", sheet, "--another", "1", "--out", _scratch.At("other"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.DoesNotContain("wishes kept", ran.Output, StringComparison.Ordinal);
        Assert.NotEqual(File.ReadAllBytes(_scratch.At("first.mid")), File.ReadAllBytes(_scratch.At("other.mid")));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("10")]
    [InlineData("one")]
    [InlineData("-1")]
    public async Task A_number_of_another_answer_that_is_none_is_told(string number)
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--another", number);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains($"--another: '{number}' is no number of another answer; expected a whole number from 1 to 9", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Other_bells_that_wishes_leave_no_room_for_are_told()
    {
        var ran = await Draft("[[leave-alone]]\nfrom = 1\nto = 4\n", "--another", "1");
        Assert.Equal(1, ran.ExitCode);
        Assert.StartsWith(
            _scratch.At("w.toml:2:8: these cannot all be kept: bars 1 to 4: no accompaniment (line 2); at least 2 of 5 chords strike other bells than in the first answer; expected this wish left out, or the draft without --another and --vary-repeats\n"),
            ran.Error,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_repeated_may_vary()
    {
        var ran = await Ran.Of("draft", _scratch.Put("buoys.chords", Sheet), "--vary-repeats", "--out", _scratch.At("first"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("  - what is repeated has other bells in at least one chord of each passage\n", File.ReadAllText(_scratch.At("first.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_names_what_can_be_wished()
    {
        var help = (await Ran.Of("draft", "--help")).Output;
        Assert.All(["--wishes <FILE>", "--another <NUMBER>", "--vary-repeats"], option => Assert.Contains(option, help, StringComparison.Ordinal));
    }

    private Task<Ran> Draft(string wishes, params string[] options) => Ran.Of(
        ["draft", _scratch.Put("buoys.chords", Sheet), "--wishes", _scratch.Put("w.toml", wishes), "--out", _scratch.At("first"), .. options]);
}
