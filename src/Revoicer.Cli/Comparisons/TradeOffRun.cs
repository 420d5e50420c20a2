using System.Text;
using Revoicer.Arrangements;
using Revoicer.Cli.Files;
using Revoicer.Cli.Streams;
using Revoicer.Comparisons;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.Json;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Comparisons;

/// <summary>Carries out a compare command that trades clash off against carry.</summary>
internal static class TradeOffRun
{
    /// <summary>Drafts, prints, writes what was asked for; the exit code.</summary>
    public static int Of(CompareRequest request, OpenedSettings settings, LeadSheet sheet, DraftWish wish, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (Obstacle(request, settings) is { } sentence)
        {
            error.Say($"revoicer: {sentence}");
            return ExitCode.WrongUsage;
        }

        var tradeOff = Made(settings.Choices, sheet, wish, error, cancel);
        if (tradeOff.Points.Count == 0)
        {
            return Refused(request, tradeOff.Drafts[0].Compared, error);
        }

        output.Write(request.AsJson ? Encoding.UTF8.GetString(TradeOffJson.Write(tradeOff)) : TradeOffText.Of(tradeOff));
        return ComparisonFiles.Write(request, settings, Sounds(request, tradeOff), ComparedPictures.Of(tradeOff), output, error, cancel);
    }

    // Without any draft, that which asks for the least says why.
    private static int Refused(CompareRequest request, ComparedSetting first, TextWriter error)
    {
        error.Write(first.Drafting switch
        {
            Drafting.Astray astray => string.Concat(astray.Problems),
            Drafting.Unmet unmet => string.Concat(unmet.Problems),
            _ => string.Concat(first.Obstacles.Select(reason => VisibleText.OneLine($"{request.Sheet}: {reason}") + "\n")),
        });
        return first.Drafting is Drafting.Astray ? ExitCode.WrongUsage : ExitCode.NotPlayable;
    }

    private static string? Obstacle(CompareRequest request, OpenedSettings settings) => request switch
    {
        _ when settings.Choices.Count > 1 => "--trade-off lays the drafts of one sound, on one tower, in one layout and key side by side; name one of each",
        { SoundFolder: { } folder } when !Directory.Exists(folder) => $"--write-sounds: there is no folder {folder} to put the sounds into; make it, or name another",
        _ => null,
    };

    private static TradeOff Made(SettingChoices choices, LeadSheet sheet, DraftWish wish, TextWriter error, CancellationToken cancel)
    {
        using var progress = new ProgressLine(error);
        return TradingOff.Of(
            sheet, choices.Towers[0], choices.Sounds[0], choices.Keys[0], wish with { Layout = choices.Layouts[0] }, TimeProvider.System, new CountLine(progress, TradingOff.MostDrafts, "drafts"), cancel);
    }

    // Numbered as in the table, with zeros before, so that a folder lists them in its order.
    private static IEnumerable<OutputFile> Sounds(CompareRequest request, TradeOff tradeOff)
    {
        if (request.SoundFolder is not { } folder)
        {
            yield break;
        }

        var name = Path.GetFileNameWithoutExtension(request.Sheet);
        foreach (var (place, point) in tradeOff.Points.Index())
        {
            var about = $"Number {place + 1} of the trade-off between clash and carry of {tradeOff.Title} on {tradeOff.AsItStands.Setting.Tower}.";
            yield return new OutputFile(
                Path.Combine(folder, FormattableString.Invariant($"{name}-{place + 1:00}.toml")),
                Encoding.UTF8.GetBytes(SoundWriting.Text(point.Sound, about)));
        }
    }
}
