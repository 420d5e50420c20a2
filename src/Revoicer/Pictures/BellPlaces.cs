using Revoicer.Bells;

namespace Revoicer.Pictures;

/// <summary>Finds bells by the pitch that is heard.</summary>
internal static class BellPlaces
{
    /// <summary>The place in <see cref="Tower.Bells"/> of the bell whose strike note has a MIDI number, or null where the tower has none.</summary>
    public static int? Find(Tower tower, int strikeMidi)
    {
        for (var place = 0; place < tower.Bells.Count; place++)
        {
            if (tower.Bells[place].StrikeNote.Midi == strikeMidi)
            {
                return place;
            }
        }

        return null;
    }
}
