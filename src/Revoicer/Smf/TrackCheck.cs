using System.Globalization;
using Revoicer.Text;

namespace Revoicer.Smf;

/// <summary>What a walk through a track found.</summary>
/// <param name="Events">Where its events lie, from the first time to the end mark.</param>
/// <param name="Notes">How many notes begin in it.</param>
/// <param name="Unread">The meta and system exclusive events that the library would misread, from their status on, in order.</param>
internal sealed record TrackFound(ByteRange Events, int Notes, IReadOnlyList<ByteRange> Unread);

/// <summary>Walks through the events of one track.</summary>
/// <param name="cursor">The track's bytes.</param>
/// <param name="notesBefore">How many notes begin in the tracks before it.</param>
/// <param name="whole">The file as a place.</param>
/// <param name="remarks">Takes problems and warnings, each with the byte at which it stands.</param>
internal sealed class TrackCheck(ByteCursor cursor, int notesBefore, Place whole, Remarks remarks)
{
    private const string WholeTrack = "the whole file; export or copy it again";

    // More than any piece has, and few enough to be held.
    private const int MostNotes = 100_000;

    private readonly int _start = cursor.At;
    private readonly List<ByteRange> _unread = [];
    private int _notes;
    private byte? _running;
    private bool _isCancelled;
    private bool _isEnded;

    /// <summary>What the track has; null where it cannot be walked to its end, with the problem in the remarks.</summary>
    public TrackFound? Walk()
    {
        while (cursor.Left > 0 && !_isEnded)
        {
            var at = cursor.At;
            if (cursor.Quantity() is null)
            {
                Refuse(at, "no time before an event", "a quantity of one to four bytes");
                return null;
            }

            if (!Event())
            {
                return null;
            }
        }

        if (!_isEnded)
        {
            Warn(cursor.At, "the track has no end mark and ends with its last event", "the meta event FF 2F 00");
        }
        else if (cursor.Left > 0)
        {
            Warn(cursor.At, "what follows the end of the track is passed over", "nothing there");
        }

        return new TrackFound(new ByteRange(_start, cursor.At), _notes, _unread);
    }

    private bool Event()
    {
        var at = cursor.At;
        if (cursor.Peek is not { } first)
        {
            return Refuse(at, "the track ends between a time and its event", WholeTrack);
        }

        if (first < 0x80)
        {
            return _running is { } status ? Running(at, status) : Refuse(at, "data without a status", "a byte from 80 to FF, hexadecimal");
        }

        cursor.Take(1);
        switch (first)
        {
            case < 0xF0:
                (_running, _isCancelled) = (first, false);
                return Channel(at, first);
            case 0xF0 or 0xF7:
                _isCancelled = true;
                return Exclusive(at, first);
            case 0xFF:
                _isCancelled = true;
                return Meta(at);
            default:
                return Refuse(at, $"the status {first:X2} has no place in a file", "an event of a channel, system exclusive or meta");
        }
    }

    // Meta and system exclusive events end a running status (Standard MIDI Files 1.0). Some programs go on with it, what they
    // mean is plain, and the library takes it so.
    private bool Running(int at, byte status)
    {
        if (_isCancelled)
        {
            remarks.WarnOnce(whole, "running status goes on behind a meta or system exclusive event and is read so", "a status byte");
        }

        return Channel(at, status);
    }

    private bool Channel(int at, byte status)
    {
        var count = (status & 0xF0) is 0xC0 or 0xD0 ? 1 : 2;
        var data = cursor.Take(count);
        if (data.Length < count)
        {
            return Refuse(at, "the track ends inside an event", WholeTrack);
        }

        if (data.ContainsAnyInRange((byte)0x80, (byte)0xFF))
        {
            return Refuse(at, $"an event {status:X2} with data above 7F", "data bytes from 00 to 7F, hexadecimal");
        }

        _notes += (status & 0xF0) == 0x90 && data[1] > 0 ? 1 : 0;
        return notesBefore + _notes <= MostNotes || Refuse(at, $"more than {MostNotes} notes", "a shorter piece");
    }

    // The library passes over the length and takes all bytes up to the next F7, and knows no F7 that begins an event.
    private bool Exclusive(int at, byte status)
    {
        var from = cursor.At;
        if (cursor.Quantity() is not { } length || length > cursor.Left)
        {
            return Refuse(at, "a system exclusive event is longer than its track", WholeTrack);
        }

        cursor.Take(length);
        if (status == 0xF7 || cursor.Since(from).IndexOf((byte)0xF7) != cursor.At - from - 1)
        {
            _unread.Add(new ByteRange(at, cursor.At));
        }

        return true;
    }

    private bool Meta(int at)
    {
        if (cursor.Byte() is not { } type || cursor.Quantity() is not { } length || length > cursor.Left)
        {
            return Refuse(at, "a meta event is longer than its track", WholeTrack);
        }

        var data = cursor.Take(length);
        _isEnded = type == MetaTypes.EndOfTrack;
        var problem = MetaTypes.Problem(type, data);
        if (problem is not null)
        {
            Warn(at, $"{problem} and is passed over", "what the standard says");
        }

        if (problem is not null || !MetaTypes.HasItsLength(type, length))
        {
            _unread.Add(new ByteRange(at, cursor.At));
        }

        return true;
    }

    private bool Refuse(int at, string found, string expected)
    {
        remarks.Refuse(whole, string.Create(CultureInfo.InvariantCulture, $"{found} (byte {at})"), expected);
        return false;
    }

    private void Warn(int at, string found, string expected) =>
        remarks.Warn(whole, string.Create(CultureInfo.InvariantCulture, $"{found} (byte {at})"), expected);
}
