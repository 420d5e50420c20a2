using System.Globalization;
using System.Text;
using Revoicer.Arrangements;
using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Options;
using Revoicer.Cli.Settings;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Playing;
using Revoicer.Solving;
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
/// <param name="Prove">Whether to take as long as a proof needs.</param>
/// <param name="TimeLimit">After so many seconds the best found so far is taken; null for no limit.</param>
/// <param name="Choice">Which tune and voice of an ABC file.</param>
/// <param name="Force">Whether files that exist may be replaced.</param>
/// <param name="Layout">Where the tune is to lie.</param>
internal sealed record DraftRequest(
    string Sheet, SheetChoice Choice, string Tower, string Sound, string? Out, double? PerMinute, KeyWish? Key, bool EaseTune,
    bool Prove, double? TimeLimit, bool Force, LayoutWish Layout)
{
    /// <summary>The file of the player's wishes; null for none.</summary>
    public string? Wishes { get; init; }

    /// <summary>Which other answer; 0 for the first.</summary>
    public int Another { get; init; }

    /// <summary>Whether what is repeated may differ from the second time on.</summary>
    public bool VaryRepeats { get; init; }
}

/// <summary>Carries out a draft command.</summary>
internal static class DraftRun
{
    /// <summary>Reads, voices, writes; the exit code.</summary>
    public static int Of(DraftRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var read = SheetFile.Read(request.Sheet, request.Choice, error);
        var tower = SettingsKinds.Tower.Open(request.Tower, error);
        var sound = SettingsKinds.Sound.Open(request.Sound, error);
        var wishes = WishesFile.Read(request.Wishes, error);
        if (read is null || tower is null || sound is null || wishes is null || InKey(read, request, error) is not { } sheet)
        {
            return ExitCode.WrongUsage;
        }

        if (request.Layout != LayoutWish.Above && !sheet.HasTune)
        {
            error.Write($"{request.Sheet}: there is no tune on this sheet, so --layout has nothing to lay anywhere; leave it out, or give a sheet with a tune (an .abc file)\n");
            return ExitCode.WrongUsage;
        }

        var tempo = request.PerMinute is { } perMinute ? new Tempo(sheet.Bars[0].Meter.Beat, perMinute) : (Tempo?)null;
        using var progress = new ProgressLine(error);
        using var hurry = new CancellationTokenSource();
        if (request.TimeLimit is { } seconds)
        {
            hurry.CancelAfter(TimeSpan.FromSeconds(seconds));
        }

        var effort = (request.Prove ? ProofEffort.Thorough : ProofEffort.Quick) with { Hurry = hurry.Token };
        var wish = new DraftWish(tempo, request.EaseTune)
        {
            Effort = effort,
            Layout = request.Layout,
            Wishes = wishes,
            Another = request.Another,
            VaryRepeats = request.VaryRepeats,
        };
        var drafting = Revoicing.Draft(sheet, tower.Value, sound.Value, wish, progress, cancel);
        var wasCutShort = hurry.IsCancellationRequested;
        progress.Clear();
        switch (drafting)
        {
            case Drafting.Made made:
                return Write(made.Arrangement, request, (tower, sound), wasCutShort, output, error);
            case Drafting.Unplayable unplayable:
                foreach (var reason in unplayable.Reasons)
                {
                    error.Write($"{request.Sheet}: {reason}\n");
                }

                return ExitCode.NotPlayable;
            case Drafting.Unmet unmet:
                error.Write(string.Concat(unmet.Problems));
                return ExitCode.NotPlayable;
            case Drafting.Astray astray:
                error.Write(string.Concat(astray.Problems));
                return ExitCode.WrongUsage;
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
        Arrangement arrangement, DraftRequest request, (Settings<Tower> Tower, Settings<Sound> Sound) taken, bool wasCutShort,
        TextWriter output, TextWriter error)
    {
        var name = OutputName.Of(request.Out, request.Sheet);
        OutputFile[] files =
        [
            new(name + ".mid", MidiWriting.Bytes(arrangement)),
            new(name + ".txt", Encoding.UTF8.GetBytes(RationaleText.Of(arrangement))),
            new(name + ".json", ArrangementJson.Write(arrangement)),
            new(name + ".musicxml", MusicXmlWriting.Bytes(arrangement)),
        ];
        string?[] inputs = [request.Sheet, request.Wishes, taken.Tower.File, taken.Sound.File];
        if (OutputFiles.Write(files, request.Force, [.. inputs.OfType<string>()]) is WriteResult.Failed failed)
        {
            foreach (var sentence in failed.Sentences)
            {
                error.Write($"revoicer: {sentence}\n");
            }

            return ExitCode.NotWritten;
        }

        output.Write(Summary(arrangement));
        output.Write(wasCutShort ? "the time limit was reached: this is the best that was found by then\n" : "");
        output.Write($"tower: {taken.Tower.Source}; sound: {taken.Sound.Source}\n");
        output.Write(arrangement.Wishes.Count == 0 ? "" : $"wishes kept: {arrangement.Wishes.Count}, told in {name}.txt\n");
        var told = arrangement.Totals.LeftOut.Count;
        output.Write(told == 0 ? "" : $"does not go as written: {told}, told in {name}.txt\n");
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
            median clash {totals.MedianClash:0} (100 = C4 E4 G4 struck together), {Bass(arrangement)}
            search: {arrangement.Status}

            """) + Layout(arrangement);
    }

    private static string Bass(Arrangement arrangement) => arrangement.HasTuneBelow
        ? "the tune below is the bass"
        : string.Create(CultureInfo.InvariantCulture, $"root or slash bass lowest in {100 * arrangement.Totals.RootLowest:0} % of the chords");

    // Which of two layouts was taken; nothing where one alone was asked for.
    private static string Layout(Arrangement arrangement) => arrangement.Layout switch
    {
        { Other: { } other } layout => string.Create(
            CultureInfo.InvariantCulture,
            $"layout: the tune {TuneLayoutNames.Of(layout.Tune)}, price {layout.Price / 1000.0:0.0} against {other.Price / 1000.0:0.0}, the tune with itself counted\n"),
        { Obstacle: not null } layout => $"layout: the tune {TuneLayoutNames.Of(layout.Tune)}; the other cannot be played here\n",
        _ => "",
    };
}
