using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.LeadSheets.ChordGrid;
using Revoicer.Text;

namespace Revoicer.Benchmarks;

/// <summary>Reads sheets by the ending of their names.</summary>
internal static class SheetFiles
{
    /// <summary>The sheet; null, with a sentence on standard error, where it cannot be read.</summary>
    public static LeadSheet? Read(string file)
    {
        var reading = file.EndsWith(".abc", StringComparison.Ordinal)
            ? AbcReader.Read(file, SheetBytes.Decode(File.ReadAllBytes(file)).Text, SheetChoice.First)
            : ChordGridReader.Read(file, File.ReadAllText(file));
        if (reading is Reading<LeadSheet>.Accepted accepted)
        {
            return accepted.Value;
        }

        Console.Error.WriteLine($"{file} cannot be read");
        return null;
    }
}
