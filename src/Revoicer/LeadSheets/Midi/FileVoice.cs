using System.Globalization;
using Revoicer.Smf;
using Revoicer.Text;

namespace Revoicer.LeadSheets.Midi;

/// <summary>The notes of one channel in one track.</summary>
/// <param name="Name">What it is called; no two of a file are alike.</param>
/// <param name="Notes">Its notes in order of beginning; at least one.</param>
internal sealed record FileVoice(string Name, IReadOnlyList<SoundedNote> Notes)
{
    // General MIDI 1: channel 10, counted from 1, is percussion, whose notes are no pitches.
    private const int Percussion = 10;

    private const int MostVoices = 100;

    /// <summary>All voices in the order of tracks, then of channels; none, with a problem told, where the file has no notes.</summary>
    /// <param name="file">The file; where one track holds all voices, its name is the title.</param>
    /// <param name="whole">The file as a place.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    public static IReadOnlyList<FileVoice> All(SmfFile file, Place whole, Remarks remarks)
    {
        var (isOneTrack, tracks) = (file.Format == 0, file.Tracks);
        var found = tracks.Index()
            .SelectMany(t => t.Item.Edges.GroupBy(e => e.Channel).OrderBy(c => c.Key).Select(c => (Track: t.Index, Channel: c.Key, Edges: c)))
            .ToList();
        var drummed = found.Where(v => v.Channel == Percussion).Sum(v => v.Edges.Count(e => e.IsOn));
        var voices = new List<(int Track, int Channel, IReadOnlyList<SoundedNote> Notes)>();
        foreach (var (track, channel, edges) in found.Where(v => v.Channel != Percussion))
        {
            var pairs = NotePairs.Of(edges, tracks[track].End);
            pairs.Tell(Of(tracks, track, channel), whole, remarks);
            if (pairs.Notes.Count > 0)
            {
                voices.Add((track, channel, pairs.Notes));
            }
        }

        TellOfPercussion(drummed, voices.Count, whole, remarks);
        if (voices.Count > MostVoices)
        {
            remarks.Refuse(whole, string.Create(CultureInfo.InvariantCulture, $"the file has {voices.Count} voices, counting each channel of each track"), $"at most {MostVoices}");
        }

        var taken = new HashSet<string>();
        return [.. voices.Select((v, i) => new FileVoice(Unlike(Called(i), taken), v.Notes))];

        string Called(int i) => CalledBy(
            isOneTrack ? null : tracks[voices[i].Track].Name,
            !isOneTrack && voices.Count(v => v.Track == voices[i].Track) == 1 ? null : voices[i].Channel,
            i + 1);
    }

    private static void TellOfPercussion(int drummed, int voices, Place whole, Remarks remarks)
    {
        var also = string.Create(CultureInfo.InvariantCulture, $"{drummed} {(drummed == 1 ? "note" : "notes")} of percussion on channel 10");
        if (voices == 0)
        {
            remarks.Refuse(whole, drummed == 0 ? "the file has no notes" : $"the file has no notes but {also}", "at least one note on another channel than 10");
        }
        else if (drummed > 0)
        {
            remarks.Warn(whole, $"{also} {(drummed == 1 ? "is" : "are")} passed over", "notes with a pitch on other channels");
        }
    }

    private static string CalledBy(string? track, int? channel, int number)
    {
        var called = channel is { } c ? string.Create(CultureInfo.InvariantCulture, $"channel {c}") : null;
        return (track, called) switch
        {
            (null, null) => number.ToString(CultureInfo.InvariantCulture),
            (null, _) => called!,
            (_, null) => track,
            _ => $"{track}, {called}",
        };
    }

    private static string Of(IReadOnlyList<SmfTrack> tracks, int track, int channel) =>
        string.Create(CultureInfo.InvariantCulture, $"in {(tracks[track].Name is { } name ? $"'{Quoted.Text(name)}'" : $"track {track + 1}")}, channel {channel},");

    private static string Unlike(string name, HashSet<string> taken)
    {
        var free = name;
        for (var i = 2; !taken.Add(free); i++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{name} ({i})");
        }

        return free;
    }
}
