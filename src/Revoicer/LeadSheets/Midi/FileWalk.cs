using System.Globalization;
using System.Text;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>
/// Walks through a whole Standard MIDI File (MIDI Manufacturers Association, 1996) before anything is made of it: every chunk
/// and every event has to lie where the lengths say. Nothing is set aside on the word of a length.
/// </summary>
/// <param name="file">The bytes.</param>
/// <param name="whole">The file as a place.</param>
/// <param name="remarks">Takes problems and warnings, each with the byte at which it stands.</param>
internal sealed class FileWalk(byte[] file, Place whole, Remarks remarks)
{
    private const int HeadBytes = 6;
    private const int MostTracks = 1_000;
    private const int SmpteBit = 0x8000;

    private readonly ByteCursor _cursor = new(file, 0, file.Length);

    /// <summary>What of the file is read; null where a problem was told.</summary>
    public static PlainFile? Through(byte[] file, Place whole, Remarks remarks) => new FileWalk(file, whole, remarks).File();

    private PlainFile? File()
    {
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
        return IsReadable(format, tracks, division) ? Tracks(tracks, new PlainFile(format, division)) : null;
    }

    private bool IsReadable(int format, int tracks, int division)
    {
        if (format > 1)
        {
            Refuse($"the file has format {format} (byte 8)", "format 0 or 1; patterns of format 2 follow each other in no known order: export the piece again");
        }
        else if (format == 0 && tracks != 1)
        {
            Refuse($"the file has format 0 and {tracks} tracks (byte 10)", "one track, or format 1");
        }
        else if (tracks is 0 or > MostTracks)
        {
            Refuse($"the file has {tracks} tracks (byte 10)", $"1 to {MostTracks}");
        }
        else if ((division & SmpteBit) != 0)
        {
            Refuse("the file counts time in frames of film (byte 12)", "ticks of a quarter note, from which bars can be told: export it with musical time");
        }
        else if (division == 0)
        {
            Refuse("a quarter note has 0 ticks (byte 12)", "1 to 32767");
        }

        return !remarks.HasProblems;
    }

    private PlainFile? Tracks(int count, PlainFile plain)
    {
        var found = 0;
        while (_cursor.Left > 0)
        {
            var at = _cursor.At;
            var kind = Encoding.Latin1.GetString(_cursor.Take(4));
            var length = _cursor.Four();
            if (length is null || length > _cursor.Left)
            {
                return found == count ? Surplus(plain, at) : Cut(at, kind, length, count, found);
            }

            var end = _cursor.At + (int)length;
            if (kind == "MTrk" && ++found > count)
            {
                return Surplus(plain, at);
            }

            if (kind == "MTrk" && !new TrackWalk(new ByteCursor(file, _cursor.At, end), plain, whole, remarks).Walk())
            {
                return null;
            }

            _cursor.Take((int)length);
        }

        return found == count ? plain : Refused(Invariant($"the file ends at byte {file.Length} with {found} of {count} tracks"), "the whole file; export or copy it again");
    }

    private PlainFile Surplus(PlainFile plain, int at)
    {
        remarks.Warn(whole, Invariant($"what follows the last track, from byte {at} on, is passed over"), "nothing there");
        return plain;
    }

    private PlainFile? Cut(int at, string kind, uint? length, int count, int found) => Refused(
        length is null
            ? Invariant($"the file ends inside the chunk at byte {at}, with {found} of {count} tracks read")
            : Invariant($"the chunk '{Quoted.Text(kind)}' at byte {at} has {length} bytes by its length, and {_cursor.Left} follow"),
        "the whole file; export or copy it again");

    private PlainFile? Refused(string found, string expected)
    {
        remarks.Refuse(whole, found, expected);
        return null;
    }

    private void Refuse(FormattableString found, string expected) => remarks.Refuse(whole, Invariant(found), expected);

    private void Refuse(string found, string expected) => remarks.Refuse(whole, found, expected);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
