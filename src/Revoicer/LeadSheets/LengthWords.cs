using System.Globalization;
using Revoicer.Music;

namespace Revoicer.LeadSheets;

/// <summary>Lengths as messages name them.</summary>
internal static class LengthWords
{
    /// <summary>"5 quarters", "1 quarter", "7/2 quarters".</summary>
    public static string Quarters(Beats length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length} {(length == Beats.OfQuarters(1) ? "quarter" : "quarters")}");
}
