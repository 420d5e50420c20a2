using Revoicer.Arrangements;
using Revoicer.Text;

namespace Revoicer.Writing.Json;

/// <summary>An arrangement as a JSON file (RFC 8259), described in docs/files.md under "Arrangement files".</summary>
public static class ArrangementJson
{
    /// <summary>The version of the form; it grows when a file of the new form could not be read as one of the old.</summary>
    public const int Format = 8;

    // An arrangement of an hour has some 10 MB. Estimate.
    private const int LargestFile = 32 * 1024 * 1024;

    /// <summary>
    /// The file's bytes: UTF-8 without byte order mark, indented, lines ending in \n. What <see cref="Read"/> makes of
    /// them equals the arrangement, provided its numbers lie within the ranges that docs/files.md gives.
    /// </summary>
    /// <exception cref="ArgumentException">
    /// A figure that is not finite, or a choice with a stroke that is none of the arrangement's.
    /// </exception>
    public static byte[] Write(Arrangement arrangement) =>
        JsonForm.File(arrangement, new ArrangementJsonWriter(new StrokePlaces(arrangement.Strokes)).Arrangement);

    /// <summary>
    /// Reads a file of this form. Members may stand in any order; one that is missing, unknown, given twice, out of
    /// range or at odds with another is a problem with its place. At most a hundred problems are listed.
    /// </summary>
    /// <param name="fileName">The name that messages give.</param>
    /// <param name="file">The file's bytes, a byte order mark allowed; at most 32 MB and a million values.</param>
    public static Reading<Arrangement> Read(string fileName, ReadOnlySpan<byte> file)
    {
        if (file.Length > LargestFile)
        {
            return Reading<Arrangement>.No(Place.WholeFile(fileName), $"the file has {file.Length} bytes", "an arrangement of at most 32 MB");
        }

        var problems = new JsonProblems(fileName, file.ToArray());
        using var document = JsonCheck.Document(problems);
        if (document is { RootElement: var root })
        {
            var arrangement = JsonFields.Of(root, problems, ArrangementJsonReader.Arrangement);
            if (problems.None)
            {
                new ArrangementCheck(problems).Of(arrangement, root);
            }

            if (problems.None)
            {
                return Reading<Arrangement>.Of(arrangement);
            }
        }

        return new Reading<Arrangement>.Refused(problems.InOrder());
    }
}
