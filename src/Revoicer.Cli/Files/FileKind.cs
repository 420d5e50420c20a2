using System.Runtime.InteropServices;

namespace Revoicer.Cli.Files;

/// <summary>What stands under a name on disk, told without opening it: a pipe would wait for its other end, a device could act.</summary>
internal static class FileKind
{
    // statx(2) and inode(7): the numbers are those of the kernel, alike on every machine.
    private const int FromCurrentFolder = -100;
    private const uint AskForKind = 1;
    private const int ModeAt = 28;
    private const int Size = 256;
    private const int KindBits = 0xF000;

    /// <summary>
    /// What it is, with its article, where it is neither an ordinary file nor a folder nor nothing: "a pipe"; else null.
    /// Null as well on systems that have no such call.
    /// </summary>
    /// <param name="path">The name; a link is followed.</param>
    public static string? Special(string path) => (ModeOf(path) & KindBits) switch
    {
        0x1000 => "a pipe",
        0x2000 or 0x6000 => "a device",
        0xC000 => "a socket",
        _ => null,
    };

    private static int ModeOf(string path)
    {
        if (!OperatingSystem.IsLinux())
        {
            return 0;
        }

        try
        {
            var told = new byte[Size];
            return Statx(FromCurrentFolder, path, 0, AskForKind, told) == 0 ? MemoryMarshal.Read<ushort>(told.AsSpan(ModeAt)) : 0;
        }
        catch (EntryPointNotFoundException)
        {
            return 0;
        }
    }

    [DllImport("libc", EntryPoint = "statx", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Statx(int folder, [MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags, uint mask, byte[] told);
}
