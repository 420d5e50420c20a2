using System.Net.Sockets;
using System.Runtime.Versioning;
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
        var result = OutputFiles.Write([New("a.mid"), New("a.json")], force, [Path.Combine(_folder, ".", "a.json")], CancellationToken.None);
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
        Assert.Contains("is an input", Refused(OutputFiles.Write([New("a.mid")], true, [At("sheet")], CancellationToken.None)).Single());
        Assert.Contains("is an input", Refused(OutputFiles.Write([New("sheet")], true, [At("a.mid")], CancellationToken.None)).Single());
        Assert.Contains("is an input", Refused(OutputFiles.Write([New("same/sheet")], true, [At("sheet")], CancellationToken.None)).Single());
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
        var result = OutputFiles.Write(files, true, [], (from, to, kept) =>
        {
            if (to.EndsWith(stubborn, StringComparison.Ordinal))
            {
                throw new IOException("No space left.");
            }

            FileSwap.Put(from, to, kept);
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
        var result = OutputFiles.Write([New("a.txt")], false, [], (from, to, kept) =>
        {
            Put("a.txt", "from elsewhere");
            FileSwap.Put(from, to, kept);
        });
        Assert.Single(Refused(result));
        Assert.Equal(["a.txt"], Names());
        Assert.Equal("from elsewhere", Read("a.txt"));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_device_a_pipe_a_socket_and_links_to_them_are_refused(bool force)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the devices of Linux are needed");
        File.CreateSymbolicLink(At("device"), "/dev/full");
        File.CreateSymbolicLink(At("endless"), "/dev/zero");
        using var made = System.Diagnostics.Process.Start("mkfifo", At("pipe"));
        made.WaitForExit();
        File.CreateSymbolicLink(At("to-pipe"), "pipe");
        using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(At("socket")));
        Directory.CreateDirectory(At("folder"));
        File.CreateSymbolicLink(At("to-folder"), "folder");
        var before = Names();
        Assert.Equal(
            [
                $"{At("device")} is a device and no file, and is never written to; name another file with --out",
                $"{At("endless")} is a device and no file, and is never written to; name another file with --out",
                $"{At("pipe")} is a pipe and no file, and is never written to; name another file with --out",
                $"{At("socket")} is a socket and no file, and is never written to; name another file with --out",
                $"{At("to-folder")} is a folder; name another file with --out",
            ],
            Refused(Write(force, "device", "endless", "pipe", "socket", "to-folder", "a.mid")));
        Assert.Equal([$"{At("to-pipe")} is a pipe and no file, and is never written to; name another file with --out"], Refused(Write(force, "to-pipe")));
        Assert.Equal(before, Names());
    }

    // path_resolution(7): ".." leads out of the folder in which the system is, not out of the name.
    [Fact]
    public void A_step_back_behind_a_link_leads_out_of_the_folder_that_it_leads_to()
    {
        Directory.CreateDirectory(At("far/inner"));
        Directory.CreateSymbolicLink(At("near"), "far/inner");
        File.CreateSymbolicLink(At("a.txt"), "near/../b.txt");
        Assert.IsType<WriteResult.Written>(Write(force: false, "near/../c.txt", "a.txt"));
        Assert.Equal("new near/../c.txt", Read("far/c.txt"));
        Assert.Equal("new a.txt", Read("far/b.txt"));
    }

    [Fact]
    public void A_chain_of_links_stays_and_a_file_that_is_not_there_yet_comes_at_its_end()
    {
        File.CreateSymbolicLink(At("a.txt"), "b.txt");
        File.CreateSymbolicLink(At("b.txt"), "c.txt");
        Assert.IsType<WriteResult.Written>(Write(force: false, "a.txt"));
        Assert.Equal(("b.txt", "c.txt"), (new FileInfo(At("a.txt")).LinkTarget, new FileInfo(At("b.txt")).LinkTarget));
        Assert.Null(new FileInfo(At("c.txt")).LinkTarget);
        Assert.Equal("new a.txt", Read("c.txt"));
    }

    [Theory]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite)]
    [UnsupportedOSPlatform("windows")]
    public void A_new_file_has_the_permissions_of_the_old_one(UnixFileMode mode)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has other permissions");
        Put("a.txt", "old");
        File.SetUnixFileMode(At("a.txt"), mode);
        Assert.IsType<WriteResult.Written>(Write(force: true, "a.txt"));
        Assert.Equal((mode, "new a.txt"), (File.GetUnixFileMode(At("a.txt")), Read("a.txt")));
    }

    // What is put back is the old file itself: its time of change and permissions show it.
    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void What_is_put_back_is_no_copy()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has other permissions");
        Put("a.mid", "old");
        File.SetUnixFileMode(At("a.mid"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
        File.SetLastWriteTimeUtc(At("a.mid"), new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc));
        Put("a.txt", "old");
        Refused(OutputFiles.Write([New("a.mid"), New("a.txt")], true, [], (from, to, kept) =>
        {
            FileSwap.Put(from, to, kept);
            if (to == At("a.txt"))
            {
                throw new IOException("No space left.");
            }
        }));
        Assert.Equal(["a.mid", "a.txt"], Names());
        Assert.Equal(("old", "old"), (Read("a.mid"), Read("a.txt")));
        Assert.Equal(new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc), File.GetLastWriteTimeUtc(At("a.mid")));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead, File.GetUnixFileMode(At("a.mid")));
    }

    [Fact]
    public void What_a_killed_run_left_goes_and_what_a_living_one_has_stays()
    {
        using var over = System.Diagnostics.Process.Start("/bin/sh", ["-c", "exit 0"]);
        over.WaitForExit();
        using var alive = System.Diagnostics.Process.Start("sleep", "600");
        try
        {
            var ours = Path.GetFileName(PassingName.Beside(At("x")));
            Put($".revoicer-{over.Id}-abc-1", "left");
            Put($".revoicer-{Environment.ProcessId}-abc-1", "left by a process of the same number");
            string[] stay = [$".revoicer-{alive.Id}-abc-1", ours, ".revoicer-notes", ".revoicer-1x-abc-1"];
            Array.ForEach(stay, name => Put(name, "stays"));
            Assert.IsType<WriteResult.Written>(Write(force: false, "a.txt"));
            Assert.Equal(stay.Append("a.txt").Order(StringComparer.Ordinal), Names());
        }
        finally
        {
            alive.Kill();
        }
    }

    [Fact]
    public void Once_broken_off_nothing_is_written()
    {
        Assert.Throws<OperationCanceledException>(() => OutputFiles.Write([New("a.txt")], false, [], new CancellationToken(canceled: true)));
        Assert.Empty(Names());
    }

    private static IReadOnlyList<string> Refused(WriteResult result) => Assert.IsType<WriteResult.Failed>(result).Sentences;

    private WriteResult Write(bool force, params string[] names) => OutputFiles.Write([.. names.Select(New)], force, [], CancellationToken.None);

    private OutputFile New(string name) => new(At(name), Encoding.UTF8.GetBytes($"new {name}"));

    private string At(string name) => Path.Combine(_folder, name);

    private void Put(string name, string content) => File.WriteAllText(At(name), content);

    private string Read(string name) => File.ReadAllText(At(name));

    private string[] Names() => [.. Directory.EnumerateFileSystemEntries(_folder).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal)];
}
