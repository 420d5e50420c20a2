using Revoicer.Bells;
using Revoicer.LeadSheets;
using Revoicer.Music;
using Revoicer.Prices;
using Revoicer.Sounds;
using Revoicer.Tests.Chords;
using Revoicer.Text;
using Revoicer.Values;
using Revoicer.Voicings;
using Xunit;

namespace Revoicer.Tests.Prices;

/// <summary>A sheet with all its prices under one sound.</summary>
internal sealed record PricedSheet(SlotPlan Plan, Sound Sound, Items<Items<Candidate>> Candidates, SheetPrices Prices);

/// <summary>Small sheets, a small tower, and their prices.</summary>
internal static class SmallSheets
{
    /// <summary>C3 G3 C4 E4 G4 B4 D5 F5: so few that every choice of three chords can be looked at.</summary>
    public static Tower EightBells { get; } = TowerOf("Slipway, 8 bells", 48, 55, 60, 64, 67, 71, 74, 77);

    /// <summary>A sheet in 4/4: bars, each with symbols that share it equally.</summary>
    /// <param name="bars">"C" or "F G7"; "-" for no chord.</param>
    /// <param name="heard">The bars in the order in which they are heard; null for once each.</param>
    public static LeadSheet Sheet(string[] bars, int[]? heard = null)
    {
        var written = bars.Select((bar, index) => Bar(index + 1, bar, index + 1 == bars.Length)).ToArray();
        return new LeadSheet("Ebb", null, null, [.. written], RepeatOrder.Played(written, heard ?? [.. Enumerable.Range(0, bars.Length)]));
    }

    /// <summary>Lists and prices the candidates of a sheet at some quarters a minute.</summary>
    public static PricedSheet Priced(LeadSheet sheet, Tower tower, Sound sound, int quarters = 90) =>
        Priced(SlotCutting.Cut(sheet, TempoMap.Steady(new Tempo(Beats.OfQuarters(1), quarters))), tower, sound);

    /// <summary>Lists and prices the candidates of slots.</summary>
    public static PricedSheet Priced(SlotPlan plan, Tower tower, Sound sound)
    {
        var instrument = new Instrument(tower, sound);
        var search = new CandidateSearch(tower, instrument.Reach, sound.RollStep);
        var candidates = plan.Slots.Select(search.List).ToItems();
        return new PricedSheet(plan, sound, candidates, SheetPrices.Of(instrument, sound, plan, candidates, TestContext.Current.CancellationToken));
    }

    /// <summary>A random candidate for each slot.</summary>
    public static int[] Choice(PricedSheet sheet, int seed)
    {
        var random = new Random(seed);
        return [.. sheet.Candidates.Select(c => random.Next(c.Count))];
    }

    private static WrittenBar Bar(int number, string symbols, bool endsSection)
    {
        var meter = new Meter(4, 4);
        var chords = symbols.Split(' ');
        var length = meter.Bar / chords.Length;
        return new WrittenBar(
            number,
            meter,
            meter.Bar,
            chords.Select((c, i) => new ChordSpan(length * i, length, c == "-" ? null : SymbolText.Chord(c), SymbolText.Place(c))).ToItems(),
            endsSection);
    }

    /// <summary>A tower of the keys given, upward, with pedals up to C4.</summary>
    public static Tower TowerOf(string name, params int[] keys)
    {
        string Key(int midi) => WrittenNote.AtMidi(midi).ToString();
        var missing = Enumerable.Range(keys[0], keys[^1] - keys[0]).Except(keys).Select(Key);
        var text = $"""
            name = "{name}"
            lowest = "{Key(keys[0])}"
            highest = "{Key(keys[^1])}"
            missing = ["{string.Join("\", \"", missing)}"]
            pedals = ["{Key(keys[0])}", "C4"]
            sounds = 12
            """;
        return Assert.IsType<Reading<Tower>.Accepted>(TowerFile.Read("slipway.toml", text)).Value;
    }
}
