using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Benchmarks;

/// <summary>Some sheets one after another, as often as it takes: a long piece with all their repeats.</summary>
internal static class JoinedSheet
{
    /// <summary>The sheets joined until at least so many bars are written.</summary>
    public static LeadSheet Of(IReadOnlyList<LeadSheet> sheets, int bars)
    {
        var written = new List<WrittenBar>();
        var played = new List<PlayedBar>();
        var start = Beats.Zero;
        for (var i = 0; written.Count < bars; i = (i + 1) % sheets.Count)
        {
            var sheet = sheets[i];
            var first = written.Count;
            written.AddRange(sheet.Bars.Select((bar, at) => bar with
            {
                Number = first + at,
                EndsSection = bar.EndsSection || at + 1 == sheet.Bars.Count,
                Key = at == 0 ? sheet.Key : bar.Key,
                Tempi = at == 0 && sheet.Tempo is { } tempo ? [new TempoChange(Beats.Zero, tempo), .. bar.Tempi] : bar.Tempi,
            }));
            played.AddRange(sheet.Played.Select(p => p with { Written = first + p.Written, Start = start + p.Start }));
            start += sheet.Length;
        }

        return new LeadSheet($"{bars} bars", sheets[0].Key, sheets[0].Tempo, written.ToItems(), played.ToItems());
    }
}
