using System.Text;
using Revoicer.Cli.Files;
using Xunit;

namespace Revoicer.Cli.Tests.Files;

public sealed class OutputFilesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("revoicer-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void All_files_are_written_and_nothing_else_is_left()
    {
        Assert.IsType<WriteResult.Written>(Write(force: false, "a.mid", "a.txt", "a.json"));
        Assert.Equal(["a.json", "a.mid", "a.txt"], Names());
        Assert.Equal("new a.txt", Read("a.txt"));
    }

    [Fact]
    public void A_file_that_exists_stays_and_its_neighbours_are_not_written()
    {
        Put("a.txt", "old");
        Assert.Equal(
            [$"{At("a.txt")} exists already; --force replaces it, --out NAME writes beside it under another name"],
            Refused(Write(force: false, "a.mid", "a.txt")));
        Assert.Equal(["a.txt"], Names());
        Assert.Equal("old", Read("a.txt"));
    }

    [Fact]
    public void Force_replaces_what_exists_and_leaves_nothing_behind()
    {
        Put("a.txt", "old");
        Assert.IsType<WriteResult.Written>(Write(force: true, "a.mid", "a.txt"));
        Assert.Equal(["a.mid", "a.txt"], Names());
        Assert.Equal("new a.txt", Read("a.txt"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void An_input_is_never_written_to(bool force)
    {
        Put("a.json", "sheet");
        var result = OutputFiles.Write([New("a.mid"), New("a.json")], force, [Path.Combine(_folder, ".", "a.json")]);
        Assert.Equal([$"{At("a.json")} is an input of this run and is never written to; name another file with --out"], Refused(result));
        Assert.Equal(["a.json"], Names());
        Assert.Equal("sheet", Read("a.json"));
    }

    [Fact]
    public void An_input_is_known_behind_links_of_files_and_folders()
    {
        Put("sheet", "sheet");
        File.CreateSymbolicLink(At("a.mid"), "sheet");
        Directory.CreateSymbolicLink(At("same"), ".");
        Assert.Contains("is an input", Refused(OutputFiles.Write([New("a.mid")], true, [At("sheet")])).Single());
        Assert.Contains("is an input", Refused(OutputFiles.Write([New("sheet")], true, [At("a.mid")])).Single());
        Assert.Contains("is an input", Refused(OutputFiles.Write([New("same/sheet")], true, [At("sheet")])).Single());
        Assert.Equal("sheet", Read("sheet"));
    }

    [Fact]
    public void A_link_stays_a_link_and_the_file_behind_it_is_written()
    {
        Put("kept.txt", "old");
        File.CreateSymbolicLink(At("a.txt"), "kept.txt");
        Assert.Contains("exists already", Refused(Write(force: false, "a.txt")).Single());
        Assert.IsType<WriteResult.Written>(Write(force: true, "a.txt"));
        Assert.Equal("kept.txt", new FileInfo(At("a.txt")).LinkTarget);
        Assert.Equal("new a.txt", Read("kept.txt"));
    }

    [Fact]
    public void Links_in_a_circle_are_told()
    {
        File.CreateSymbolicLink(At("a.txt"), "b.txt");
        File.CreateSymbolicLink(At("b.txt"), "a.txt");
        Assert.Contains("lead in a circle", Refused(Write(force: true, "a.txt")).Single());
    }

    [Fact]
    public void A_folder_a_missing_folder_and_a_name_given_twice_are_told_together()
    {
        Directory.CreateDirectory(At("a.mid"));
        Assert.Equal(
            [
                $"{At("a.mid")} is a folder; name another file with --out",
                $"the folder of {At("none/a.txt")} does not exist; make it, or name another file with --out",
                $"{At("b.txt")} would be written twice; give the files different names",
            ],
            Refused(Write(force: false, "a.mid", "none/a.txt", "b.txt", "b.txt")));
        Assert.Equal(["a.mid"], Names());
    }

    [Fact]
    public void A_name_that_the_system_refuses_is_told_and_nothing_is_written()
    {
        var name = new string('x', 300);
        Assert.Contains("could not be written, so nothing was", Refused(Write(force: false, "a.mid", name)).Single());
        Assert.Empty(Names());
        Assert.Contains("is no file name", Refused(Write(force: false, "a\0b")).Single());
    }

    [Theory]
    [InlineData("a.mid")]
    [InlineData("a.txt")]
    [InlineData("a.json")]
    public void When_one_cannot_be_renamed_all_is_as_before(string stubborn)
    {
        Put("a.txt", "old");
        var files = new[] { "a.mid", "a.txt", "a.json" }.Select(New).ToArray();
        var result = OutputFiles.Write(files, true, [], (from, to, replace) =>
        {
            if (to.EndsWith(stubborn, StringComparison.Ordinal))
            {
                throw new IOException("No space left.");
            }

            File.Move(from, to, replace);
        });
        Assert.Equal(
            [$"{At(stubborn)} could not be written, so nothing was: No space left; make room or name another place with --out"],
            Refused(result));
        Assert.Equal(["a.txt"], Names());
        Assert.Equal("old", Read("a.txt"));
    }

    [Fact]
    public void A_file_that_comes_in_between_is_not_replaced_without_force()
    {
        var result = OutputFiles.Write([New("a.txt")], false, [], (from, to, replace) =>
        {
            Put("a.txt", "from elsewhere");
            File.Move(from, to, replace);
        });
        Assert.Single(Refused(result));
        Assert.Equal(["a.txt"], Names());
        Assert.Equal("from elsewhere", Read("a.txt"));
    }

    private static IReadOnlyList<string> Refused(WriteResult result) => Assert.IsType<WriteResult.Failed>(result).Sentences;

    private WriteResult Write(bool force, params string[] names) => OutputFiles.Write([.. names.Select(New)], force, []);

    private OutputFile New(string name) => new(At(name), Encoding.UTF8.GetBytes($"new {name}"));

    private string At(string name) => Path.Combine(_folder, name);

    private void Put(string name, string content) => File.WriteAllText(At(name), content);

    private string Read(string name) => File.ReadAllText(At(name));

    private string[] Names() => [.. Directory.EnumerateFileSystemEntries(_folder).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal)];
}
