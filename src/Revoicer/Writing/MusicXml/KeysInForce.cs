using Revoicer.Arrangements;
using Revoicer.Music;

namespace Revoicer.Writing.MusicXml;

/// <summary>Which key holds in which bar: on paper the last one that stands before it, whatever is heard before.</summary>
internal sealed class KeysInForce
{
    private readonly KeySignature? _first;
    private readonly (int Written, KeySignature Key)[] _changes;

    public KeysInForce(Arrangement arrangement)
    {
        _first = arrangement.WrittenKey;
        _changes = [.. arrangement.Bars.Where(b => b.Key is not null).Select(b => (b.Written, b.Key!.Value)).DistinctBy(b => b.Written).OrderBy(b => b.Written)];
    }

    /// <summary>The key of a bar; null where the sheet names none.</summary>
    public KeySignature? Of(ArrangedBar bar)
    {
        var key = _first;
        foreach (var (written, change) in _changes)
        {
            if (written > bar.Written)
            {
                break;
            }

            key = change;
        }

        return key is { } found && Math.Abs(found.Fifths) > 7 ? found.Moved(0) : key;
    }
}
