using System.Text.Json;
using Revoicer.Arrangements;

namespace Revoicer.Writing.Json;

/// <summary>Writes the members of a quarrel: of two partials, or of one with the chord.</summary>
internal static class JsonQuarrel
{
    public static void Write(Utf8JsonWriter json, Quarrel quarrel)
    {
        switch (quarrel)
        {
            case PairQuarrel pair:
                json.WriteNumber("lowerMidi", pair.Lower.Midi);
                json.WriteString("lowerName", pair.Lower.ToString());
                json.WriteString("lowerPartial", pair.LowerPartial);
                json.WriteNumber("lowerFrequency", pair.LowerFrequency.Value);
                json.WriteNumber("upperMidi", pair.Upper.Midi);
                json.WriteString("upperName", pair.Upper.ToString());
                json.WriteString("upperPartial", pair.UpperPartial);
                json.WriteNumber("upperFrequency", pair.UpperFrequency.Value);
                break;
            case ChordQuarrel single:
                json.WriteNoteMembers(single.Bell);
                json.WriteString("partial", single.Partial);
                json.WriteNumber("frequency", single.Frequency.Value);
                json.WriteNumber("sounds", single.Sounds.Value);
                json.WriteNumber("beside", single.Beside.Value);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(quarrel), quarrel, "no such quarrel");
        }

        json.WriteNumber("share", quarrel.Share);
        json.WriteNumber("lasts", quarrel.Lasts.Value);
    }
}
