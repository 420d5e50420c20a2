using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Options;
using Revoicer.Cli.Settings;
using Revoicer.Cli.Streams;
using Revoicer.Comparisons;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Values;
using Revoicer.Writing.Json;
using Revoicer.Writing.Midi;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Comparisons;

/// <summary>Carries out a compare command.</summary>
internal static class CompareRun
{
    // Each draft stays in memory until the table is printed.
    private const int MostDrafts = 500;

    /// <summary>Reads, drafts, prints; the exit code.</summary>
    public static int Of(CompareRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (request.Contradiction is { } sentence)
        {
            error.Say($"revoicer: {sentence}");
            return ExitCode.WrongUsage;
        }

        var settings = OpenedSettings.Of(request, error);
        if (Directory.Exists(request.Sheet))
        {
            return settings is null ? ExitCode.WrongUsage : CompareFolder.Of(request, settings, output, error, cancel);
        }

        var sheet = SheetFile.Read(request.Sheet, request.Choice, error);
        var wishes = WishesFile.Read(request.Wishes, error);
        if (settings is null || sheet is null || wishes is null || !CanCompare(request, settings, sheet, error))
        {
            return ExitCode.WrongUsage;
        }

        if (!ComparisonFiles.CanWrite(request, settings, error))
        {
            return ExitCode.NotWritten;
        }

        var tempo = request.PerMinute is { } perMinute ? new Tempo(sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        var wish = new DraftWish(tempo) { Octave = request.Octave, Wishes = wishes, WithPlainHand = request.Plain };
        if (request.TradeOff)
        {
            return TradeOffRun.Of(request, settings, sheet, wish, output, error, cancel);
        }

        var comparison = Compare(settings, sheet, wish, error, cancel);
        if (comparison.Settings.Select(s => s.Drafting).OfType<Drafting.Astray>().FirstOrDefault() is { } astray)
        {
            error.Write(string.Concat(astray.Problems));
            return ExitCode.WrongUsage;
        }

        output.Write(request.AsJson ? Encoding.UTF8.GetString(ComparisonJson.Write(comparison)) : Told(request, comparison));
        var written = ComparisonFiles.Write(request, settings, PlainHand(request, comparison, error), ComparedPictures.Of(comparison, TowerOf, request.Bar), output, error, cancel);
        return comparison.Settings.Any(s => s.Made is not null) ? written : ExitCode.NotPlayable;

        // Settings come tower by tower, as many for each.
        Tower TowerOf(ComparedSetting setting) => settings.Choices.Towers[
            comparison.Settings.Index().First(s => ReferenceEquals(s.Item, setting)).Index / (comparison.Settings.Count / settings.Choices.Towers.Count)];
    }

    /// <summary>Whether a sheet can be compared as asked; where it cannot, why is told.</summary>
    public static bool CanCompare(CompareRequest request, OpenedSettings settings, LeadSheet sheet, TextWriter error)
    {
        if (AskedOfTune.Obstacle(sheet, request.Layouts, request.Octave) is { } obstacle)
        {
            error.Say($"{request.Sheet}: {obstacle}");
            return false;
        }

        if (request.Bar is { } bar && sheet.Bars.All(b => b.Number != bar))
        {
            error.Say($"{request.Sheet}: --bar {bar}: there is no such bar; expected one from {sheet.Bars[0].Number} to {sheet.Bars.Max(b => b.Number)}");
            return false;
        }

        if (settings.Choices.Count > MostDrafts)
        {
            error.Say($"{request.Sheet}: these settings come to {settings.Choices.Count} drafts; expected at most {MostDrafts}: name fewer sounds, towers, layouts or keys");
            return false;
        }

        return true;
    }

    private static Comparison Compare(OpenedSettings settings, LeadSheet sheet, DraftWish wish, TextWriter error, CancellationToken cancel)
    {
        using var progress = new ProgressLine(error);
        var all = sheet.HasTune ? settings.Choices.Count : settings.Choices.Count / settings.Choices.Layouts.Count;
        return Comparing.Of(sheet, settings.Choices, wish, TimeProvider.System, new CountLine(progress, all, "drafts"), cancel);
    }

    private static string Told(CompareRequest request, Comparison comparison)
    {
        var text = ComparisonText.Of(comparison);
        if (request.Chords)
        {
            text += "\n" + ChordDifferencesText.Of(comparison);
        }

        return request.Bar is { } bar ? text + BarOf(comparison, bar) : text;
    }

    private static string BarOf(Comparison comparison, int bar) =>
        ChordDifferencesText.OfBar(comparison, bar) is { Length: > 0 } text
            ? text
            : string.Create(CultureInfo.InvariantCulture, $"\nNo chord begins in bar {bar}.\n");

    private static OutputFile[] PlainHand(CompareRequest request, Comparison comparison, TextWriter error)
    {
        if (comparison.Settings.Select(s => s.Made?.PlainHand).OfType<Arrangement>().FirstOrDefault() is { } plain)
        {
            return [new OutputFile(OutputName.Of(request.Out, request.Sheet) + "-plain.mid", MidiWriting.Bytes(plain))];
        }

        error.Say(request.Plain ? $"{request.Sheet}: no plain hand can be written, as there is no draft, or the tower lacks a bell that the plain hand needs" : null);
        return [];
    }
}
