using System.Globalization;
using System.Text;
using Revoicer.Text;

namespace Revoicer.Smf;

/// <summary>
/// Walks through a whole Standard MIDI File (MIDI Manufacturers Association, 1996) before anything is made of it: every chunk
/// and every event has to lie where the lengths say. No memory is taken on the word of a length.
/// </summary>
/// <param name="file">The bytes.</param>
/// <param name="whole">The file as a place.</param>
/// <param name="remarks">Takes problems and warnings, each with the byte at which it stands.</param>
internal sealed class FileCheck(byte[] file, Place whole, Remarks remarks)
{
    private const int LargestBytes = 4 * 1024 * 1024;
    private const int HeadBytes = 6;
    private const int MostTracks = 1_000;
    private const int SmpteBit = 0x8000;
    private const string WholeFile = "the whole file; export or copy it again";

    private readonly ByteCursor _cursor = new(file, 0, file.Length);

    /// <summary>The file, found to be readable; null, with the problem in the remarks, where it is not.</summary>
    /// <param name="file">The bytes, at most 4 MiB.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static CheckedFile? Of(byte[] file, Place whole, Remarks remarks) => new FileCheck(file, whole, remarks).File();

    private CheckedFile? File()
    {
        if (file.Length > LargestBytes)
        {
            return Refused(Invariant($"a file of {file.Length} bytes"), Invariant($"at most {LargestBytes}"));
        }

        if (!file.AsSpan().StartsWith("MThd"u8))
        {
            return Refused("byte 0 does not begin a MIDI file", "the four letters MThd");
        }

        _cursor.Take(4);
        if (_cursor.Four() is not { } length || length < HeadBytes || length > _cursor.Left)
        {
            return Refused("the head at byte 0 is not whole", "six bytes: format, number of tracks, division");
        }

        var (format, tracks, division) = (_cursor.Two()!.Value, _cursor.Two()!.Value, _cursor.Two()!.Value);
        _cursor.Take((int)length - HeadBytes);
        return HeadProblem(format, tracks, division) is var (found, expected) ? Refused(found, expected) : Tracks(format, tracks, division);
    }

    private static (string Found, string Expected)? HeadProblem(int format, int tracks, int division) => (format, tracks, division) switch
    {
        ( > 1, _, _) => (Invariant($"the file has format {format} (byte 8)"), "format 0 or 1; patterns of format 2 follow each other in no known order: export the piece again"),
        (0, not 1, _) => (Invariant($"the file has format 0 and {tracks} tracks (byte 10)"), "one track, or format 1"),
        (_, 0 or > MostTracks, _) => (Invariant($"the file has {tracks} tracks (byte 10)"), Invariant($"1 to {MostTracks}")),
        (_, _, >= SmpteBit) => ("the file counts time in frames of film (byte 12)", "ticks of a quarter note, from which bars can be told: export it with musical time"),
        (_, _, 0) => ("a quarter note has 0 ticks (byte 12)", Invariant($"1 to {SmfNumbers.LargestDivision}")),
        _ => null,
    };

    private CheckedFile? Tracks(int format, int count, int division)
    {
        var found = new List<TrackFound>();
        var behindLast = 0;
        while (_cursor.Left > 0)
        {
            var at = _cursor.At;
            var kind = Encoding.Latin1.GetString(_cursor.Take(4));
            var length = _cursor.Four();
            var isCut = length is null || length > _cursor.Left;
            if (found.Count == count && (isCut || kind == "MTrk"))
            {
                remarks.Warn(whole, Invariant($"what follows the last track, from byte {at} on, is passed over"), "nothing there");
                break;
            }

            if (isCut)
            {
                return Cut(at, kind, length, count, found.Count);
            }

            var end = _cursor.At + (int)length!;
            if (kind == "MTrk")
            {
                if (new TrackCheck(new ByteCursor(file, _cursor.At, end), found.Sum(t => t.Notes), whole, remarks).Walk() is not { } track)
                {
                    return null;
                }

                found.Add(track);
                behindLast = end;
            }

            _cursor.Take((int)length);
        }

        return found.Count == count
            ? new CheckedFile(file, format, division, [.. found.Select(t => t.Events)], behindLast, [.. found.SelectMany(t => t.Unread)])
            : Refused(Invariant($"the file ends at byte {file.Length} with {found.Count} of {count} tracks"), WholeFile);
    }

    private CheckedFile? Cut(int at, string kind, uint? length, int count, int found) => Refused(
        length is null
            ? Invariant($"the file ends inside the chunk at byte {at}, with {found} of {count} tracks read")
            : Invariant($"the chunk '{Quoted.Text(kind)}' at byte {at} has {length} bytes by its length, and {_cursor.Left} follow"),
        WholeFile);

    private CheckedFile? Refused(string found, string expected)
    {
        remarks.Refuse(whole, found, expected);
        return null;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
