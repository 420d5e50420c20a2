using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Revoicer.Voicings;

namespace Revoicer.Cli.Options;

/// <summary>The octave of the tune.</summary>
internal static class OctaveOption
{
    /// <summary>By how many octaves higher than written the tune is to lie; null, for the cheapest octave, where it is left out.</summary>
    public static Option<int?> Make() => new("--octave")
    {
        HelpName = "NUMBER",
        Description = $"play the tune so many octaves higher than written, -{TunePlacing.MostOctaves} to {TunePlacing.MostOctaves} (0: as written); by default in the octave that is cheapest in all",
        CustomParser = Read,
    };

    private static int? Read(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var octaves) && octaves is >= -TunePlacing.MostOctaves and <= TunePlacing.MostOctaves)
        {
            return octaves;
        }

        result.AddError($"--octave: '{text}' is no octave to play the tune in; expected a whole number from -{TunePlacing.MostOctaves} to {TunePlacing.MostOctaves}, 0 for as written");
        return null;
    }
}
