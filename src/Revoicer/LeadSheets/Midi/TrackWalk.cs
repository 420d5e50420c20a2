using System.Globalization;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>Walks through the events of one track and keeps those that are read.</summary>
/// <param name="cursor">The track's bytes.</param>
/// <param name="plain">Takes the events.</param>
/// <param name="whole">The file as a place.</param>
/// <param name="remarks">Takes problems and warnings, each with the byte at which it stands.</param>
internal sealed class TrackWalk(ByteCursor cursor, PlainFile plain, Place whole, Remarks remarks)
{
    private const string WholeTrack = "the whole file; export or copy it again";

    // More than any piece has, and few enough to be held.
    private const int MostNotes = 100_000;

    private byte? _running;
    private bool _isCancelled;
    private bool _isEnded;

    /// <summary>Whether the track could be walked to its end; else a problem was told.</summary>
    public bool Walk()
    {
        while (cursor.Left > 0 && !_isEnded)
        {
            var at = cursor.At;
            if (cursor.Quantity() is not { } delta)
            {
                return Refuse(at, "no time before an event", "a quantity of one to four bytes");
            }

            if (!Event(delta))
            {
                return false;
            }
        }

        if (!_isEnded)
        {
            Warn(cursor.At, "the track has no end mark and ends with its last event", "the meta event FF 2F 00");
            plain.CloseTrack(0);
        }
        else if (cursor.Left > 0)
        {
            Warn(cursor.At, "what follows the end of the track is passed over", "nothing there");
        }

        return true;
    }

    private bool Event(int delta)
    {
        var at = cursor.At;
        if (cursor.Peek is not { } first)
        {
            return Refuse(at, "the track ends between a time and its event", WholeTrack);
        }

        if (first < 0x80)
        {
            return _running is { } status ? Running(delta, at, status) : Refuse(at, "data without a status", "a byte from 80 to FF, hexadecimal");
        }

        cursor.Take(1);
        switch (first)
        {
            case < 0xF0:
                (_running, _isCancelled) = (first, false);
                return Channel(delta, at, first);
            case 0xF0 or 0xF7:
                _isCancelled = true;
                return Exclusive(delta, at);
            case 0xFF:
                _isCancelled = true;
                return Meta(delta, at);
            default:
                return Refuse(at, $"the status {first:X2} has no place in a file", "an event of a channel, system exclusive or meta");
        }
    }

    // Meta and system exclusive events end a running status (Standard MIDI Files 1.0). Some programs go on with it, and what
    // they mean is plain.
    private bool Running(int delta, int at, byte status)
    {
        if (_isCancelled)
        {
            remarks.WarnOnce(whole, "running status goes on behind a meta or system exclusive event and is read so", "a status byte");
        }

        return Channel(delta, at, status);
    }

    private bool Channel(int delta, int at, byte status)
    {
        var data = cursor.Take((status & 0xF0) is 0xC0 or 0xD0 ? 1 : 2);
        if (data.Length < ((status & 0xF0) is 0xC0 or 0xD0 ? 1 : 2))
        {
            return Refuse(at, "the track ends inside an event", WholeTrack);
        }

        if (data.ContainsAnyInRange((byte)0x80, (byte)0xFF))
        {
            return Refuse(at, $"an event {status:X2} with data above 7F", "data bytes from 00 to 7F, hexadecimal");
        }

        if ((status & 0xF0) is not (0x80 or 0x90))
        {
            plain.Pass(delta);
            return true;
        }

        plain.KeepNote(delta, status, data);
        return plain.Notes <= MostNotes || Refuse(at, $"more than {MostNotes} notes", "a shorter piece");
    }

    private bool Exclusive(int delta, int at)
    {
        if (cursor.Quantity() is not { } length || length > cursor.Left)
        {
            return Refuse(at, "a system exclusive event is longer than its track", WholeTrack);
        }

        cursor.Take(length);
        plain.Pass(delta);
        return true;
    }

    private bool Meta(int delta, int at)
    {
        if (cursor.Byte() is not { } type || cursor.Quantity() is not { } length || length > cursor.Left)
        {
            return Refuse(at, "a meta event is longer than its track", WholeTrack);
        }

        var data = cursor.Take(length);
        if (type == MetaTypes.EndOfTrack)
        {
            _isEnded = true;
            plain.CloseTrack(delta);
        }
        else if (MetaTypes.Problem(type, data) is { } problem)
        {
            Warn(at, $"{problem} and is passed over", "what the standard says");
            plain.Pass(delta);
        }
        else if (MetaTypes.IsRead(type))
        {
            plain.KeepMeta(delta, type, data);
        }
        else
        {
            plain.Pass(delta);
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
