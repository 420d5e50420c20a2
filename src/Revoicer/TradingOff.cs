using Revoicer.Bells;
using Revoicer.Comparisons;
using Revoicer.LeadSheets;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer;

/// <summary>Drafts a sheet again and again, asking for more carry each time, to see what that costs in clash.</summary>
public static class TradingOff
{
    /// <summary>How many drafts there are at most, that in the sound as it stands included.</summary>
    public const int MostDrafts = Steps + 2;

    // Even steps from the carry of the weakest chord, where nothing is asked, to the sound's target.
    private const int Steps = 12;

    // A sound's name has at most 200 characters.
    private const int LongestName = 150;

    /// <summary>Drafts it without asking for carry, then with the rule that every chord carries at least so far, in even steps up to the sound's target.</summary>
    /// <param name="sheet">The sheet as written.</param>
    /// <param name="tower">The tower.</param>
    /// <param name="sound">The sound, whose own price and rule on carry are put aside.</param>
    /// <param name="semitones">How much higher than written the sheet is played.</param>
    /// <param name="wish">What else the player asks of each.</param>
    /// <param name="clock">By which the drafts are timed.</param>
    /// <param name="progress">Told how many drafts are done; null where nobody listens.</param>
    /// <param name="cancel">Stops the work.</param>
    public static TradeOff Of(
        LeadSheet sheet, Tower tower, Sound sound, int semitones, DraftWish wish, TimeProvider clock, IProgress<int>? progress, CancellationToken cancel)
    {
        var cores = new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = Comparing.MostAtOnce };
        var done = 0;
        var free = Named(sound, Sound.AnyCarry);
        var first = Drafted([sound, free]);
        var asked = first[1].Made?.WeakestCarry is { } weakest ? Asked(weakest, sound.CarryTarget) : [];
        Sound[] sounds = [.. asked.Select(least => Named(sound, least))];
        var points = sounds.Zip(Drafted(sounds), (s, drafted) => new TradeOffPoint(s, drafted));
        return new TradeOff(sheet.Title, first[0], sound.CarryTarget, points.Prepend(new TradeOffPoint(free, first[1])).ToItems()) { Unheard = sheet.Unheard };

        ComparedSetting[] Drafted(Sound[] under)
        {
            var drafted = new ComparedSetting[under.Length];
            Parallel.For(0, under.Length, cores, i =>
            {
                drafted[i] = Comparing.Draft(sheet, tower, under[i], semitones, wish, clock, cancel);
                progress?.Report(Interlocked.Increment(ref done));
            });
            return drafted;
        }
    }

    /// <summary>
    /// What is asked of every chord, rising to the target in even steps, in whole hundredths of a decibel, so that a file says
    /// just that; nothing where the weakest chord reaches the target.
    /// </summary>
    private static IEnumerable<Decibels> Asked(Decibels weakest, Decibels target) => Enumerable.Range(1, Steps)
        .Select(step => Math.Round(weakest.Value + (step * (target.Value - weakest.Value) / Steps), 2))
        .Where(least => least > weakest.Value)
        .Distinct()
        .Select(least => new Decibels(least));

    private static Sound Named(Sound sound, Decibels least)
    {
        var name = sound.Name.Length <= LongestName ? sound.Name : sound.Name[..LongestName];
        var rule = least == Sound.AnyCarry ? "carry unasked" : FormattableString.Invariant($"every chord carries {least.Value:0.00} dB");
        return sound with { Name = $"{name}, {rule}", CarryShortfall = 0, CarryAtLeast = least };
    }
}
