using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.Music;
using Revoicer.Pictures;

namespace Revoicer.Benchmarks;

/// <summary>Writes the pictures of docs/clash-model.md: as SVG, as they stand there, and as PNG to look at.</summary>
internal static class PicturesReport
{
    /// <summary>0, or 1 where the machine has no font for them, or 3 where they cannot be written.</summary>
    public static int Write(string folder)
    {
        // The harbour tower begins at strike C4; for the bass below it takes the great tower, with default bells too.
        var spectra = TwoSpectra.Of(ShippedTowers.Default, Fade.Default, StrikeNote.AtMidi(60), StrikeNote.AtMidi(64));
        var intervals = IntervalClashes.Of(
            ShippedTowers.Named("great-56"), Fade.Default, StrikeNote.AtMidi(55), StrikeNote.AtMidi(84));
        (string Name, Drawing Drawing)[] drawings =
        [
            ("clash-spectrum", ClashPictures.Spectra(spectra)),
            ("clash-intervals", ClashPictures.Intervals(intervals)),
        ];
        if (drawings.Select(d => d.Drawing).OfType<Drawing.NoFont>().FirstOrDefault() is { } none)
        {
            Console.Error.WriteLine(none.Reason);
            return 1;
        }

        try
        {
            Directory.CreateDirectory(folder);
            foreach (var (name, drawing) in drawings)
            {
                var picture = ((Drawing.Made)drawing).Picture;
                File.WriteAllBytes(Path.Combine(folder, name + ".svg"), picture.Svg.AsSpan());
                File.WriteAllBytes(Path.Combine(folder, name + ".png"), picture.Png.AsSpan());
            }

            return 0;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"the pictures cannot be written to {folder}: {problem.Message}");
            return 3;
        }
    }
}
