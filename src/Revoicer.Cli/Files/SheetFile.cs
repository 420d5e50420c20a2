using System.Text;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Text;

namespace Revoicer.Cli.Files;

/// <summary>Reads a lead sheet from disk.</summary>
internal static class SheetFile
{
    private const int LargestBytes = 4 * 1024 * 1024;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The sheet; null, with every problem told, where it cannot be read. Warnings are told as well.</summary>
    public static LeadSheet? Read(string path, TextWriter error)
    {
        if (!path.EndsWith(".chords", StringComparison.OrdinalIgnoreCase))
        {
            error.Write($"{path}: not a kind of file that can be read; expected a .chords file (docs/files.md describes the form)\n");
            return null;
        }

        return Text(path, error) is { } text ? Tell(ChordGridReader.Read(path, text), error) : null;
    }

    private static LeadSheet? Tell(Reading<LeadSheet> reading, TextWriter error)
    {
        switch (reading)
        {
            case Reading<LeadSheet>.Accepted accepted:
                foreach (var warning in accepted.Warnings)
                {
                    error.Write($"warning: {warning}");
                }

                return accepted.Value;
            case Reading<LeadSheet>.Refused refused:
                foreach (var problem in refused.Problems)
                {
                    error.Write(problem.ToString());
                }

                return null;
            default:
                throw new InvalidOperationException($"no such reading: {reading}");
        }
    }

    private static string? Text(string path, TextWriter error)
    {
        try
        {
            using var file = File.OpenRead(path);
            if (file.Length > LargestBytes)
            {
                error.Write($"{path}: the file has {file.Length} bytes; expected a sheet of at most {LargestBytes}\n");
                return null;
            }

            using var reader = new StreamReader(file, Strict);
            return reader.ReadToEnd();
        }
        catch (DecoderFallbackException)
        {
            error.Write($"{path}: the file is not UTF-8 text; expected UTF-8: save it again as UTF-8\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            error.Write($"{path}: cannot be opened: {Reason(e)}\n");
        }

        return null;
    }

    private static string Reason(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file; check the name",
        UnauthorizedAccessException => "it is a folder, or you may not read it",
        _ => e.Message.TrimEnd('.'),
    };
}
