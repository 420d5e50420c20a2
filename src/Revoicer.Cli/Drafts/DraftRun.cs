using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Settings;
using Revoicer.LeadSheets;
using Revoicer.LeadSheets.Abc;
using Revoicer.Music;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Writing.Json;
using Revoicer.Writing.Midi;
using Revoicer.Writing.MusicXml;
using Revoicer.Writing.Text;

namespace Revoicer.Cli.Drafts;

/// <summary>What was meant by a draft command.</summary>
/// <param name="Sheet">The sheet's file.</param>
/// <param name="Tower">A shipped tower's name, or a file.</param>
/// <param name="Sound">A shipped sound's name, or a file.</param>
/// <param name="Out">The name of the results without ending; null for the sheet's name in this folder.</param>
/// <param name="PerMinute">Beats of the metre a minute; null for the sheet's tempo.</param>
/// <param name="Key">The key asked for; null for the sheet's.</param>
/// <param name="EaseTune">Whether notes of the tune that a bell cannot repeat so soon are left out.</param>
/// <param name="Choice">Which tune and voice of an ABC file.</param>
/// <param name="Force">Whether files that exist may be replaced.</param>
internal sealed record DraftRequest(
    string Sheet, AbcChoice Choice, string Tower, string Sound, string? Out, double? PerMinute, KeyWish? Key, bool EaseTune, bool Force);

/// <summary>Carries out a draft command.</summary>
internal static class DraftRun
{
    /// <summary>Reads, voices, writes; the exit code.</summary>
    public static int Of(DraftRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var read = SheetFile.Read(request.Sheet, request.Choice, error);
        var tower = SettingsKinds.Tower.Open(request.Tower, error);
        var sound = SettingsKinds.Sound.Open(request.Sound, error);
        if (read is null || tower is null || sound is null || InKey(read, request, error) is not { } sheet)
        {
            return ExitCode.WrongUsage;
        }

        var tempo = request.PerMinute is { } perMinute ? new Tempo(sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        using var progress = new ProgressLine(error);
        var drafting = Revoicing.Draft(sheet, tower.Value, sound.Value, new DraftWish(tempo, request.EaseTune), progress, cancel);
        progress.Clear();
        switch (drafting)
        {
            case Drafting.Made made:
                return Write(made.Arrangement, request, (tower, sound), output, error);
            case Drafting.Unplayable unplayable:
                foreach (var reason in unplayable.Reasons)
                {
                    error.Write($"{request.Sheet}: {reason}\n");
                }

                return ExitCode.NotPlayable;
            case var other:
                throw new InvalidOperationException($"no such drafting: {other}");
        }
    }

    // The sheet in the key asked for; null, with a sentence told, where it cannot be moved there.
    private static LeadSheet? InKey(LeadSheet sheet, DraftRequest request, TextWriter error)
    {
        if (request.Key is not { } wish)
        {
            return sheet;
        }

        var (moved, sentence) = wish.Apply(sheet);
        if (moved is null)
        {
            error.Write($"{request.Sheet}: {sentence}\n");
        }

        return moved;
    }

    private static int Write(
        Arrangement arrangement, DraftRequest request, (Settings<Tower> Tower, Settings<Sound> Sound) taken, TextWriter output, TextWriter error)
    {
        var name = OutputName.Of(request.Out, request.Sheet);
        OutputFile[] files =
        [
            new(name + ".mid", MidiWriting.Bytes(arrangement)),
            new(name + ".txt", Encoding.UTF8.GetBytes(RationaleText.Of(arrangement))),
            new(name + ".json", ArrangementJson.Write(arrangement)),
            new(name + ".musicxml", MusicXmlWriting.Bytes(arrangement)),
        ];
        string?[] inputs = [request.Sheet, taken.Tower.File, taken.Sound.File];
        if (OutputFiles.Write(files, request.Force, [.. inputs.OfType<string>()]) is WriteResult.Failed failed)
        {
            foreach (var sentence in failed.Sentences)
            {
                error.Write($"revoicer: {sentence}\n");
            }

            return ExitCode.NotWritten;
        }

        output.Write(Summary(arrangement));
        output.Write($"tower: {taken.Tower.Source}; sound: {taken.Sound.Source}\n");
        var eased = arrangement.Totals.LeftOut.Count;
        output.Write(eased == 0 ? "" : $"left out or eased: {eased}, told in {name}.txt\n");
        output.Write(string.Concat(files.Select(file => $"wrote {file.Name}\n")));
        return ExitCode.Done;
    }

    private static string Summary(Arrangement arrangement)
    {
        var totals = arrangement.Totals;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"""
            {arrangement.Title}: {(arrangement.Choices.Count == 1 ? "one chord" : $"{arrangement.Choices.Count} chords")} voiced for {arrangement.Tower.Name}, {arrangement.Sound}
            median clash {totals.MedianClash:0} (100 = C4 E4 G4 struck together), root or slash bass lowest in {100 * totals.RootLowest:0} % of the chords
            search: {arrangement.Status}

            """);
    }
}
