using System.Globalization;
using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>
/// The default bell: which partials a bell of a given strike frequency has, how loud they are and how long they last.
/// Numbers and their source stand in Bells/Data/bell-law.tsv: levels are good to about 5 dB, the hum's decay to 40 %.
/// </summary>
public sealed class BellLaw
{
    // The strike frequencies at which the law is tabulated: C4 C5 C6 C7 at A4 = 440 Hz (ISO 16), in Hz.
    private static readonly double LowestRegister = 440 * Math.Pow(2, -9 / 12.0);

    private const string Resource = "Revoicer.Bells.Data.bell-law.tsv";

    /// <summary>In how many registers the law is tabulated: strike C4, C5, C6, C7.</summary>
    public const int Registers = 4;

    private readonly Items<LawPartial> _partials;

    private BellLaw(Items<LawPartial> partials) => _partials = partials;

    /// <summary>The law that ships.</summary>
    public static BellLaw Default { get; } = Parse(Embedded.Text(Resource));

    /// <summary>The law with something changed, to learn how much hangs on it.</summary>
    /// <exception cref="ArgumentException">The change speaks of more or fewer partials or registers than the law has, or a decay is not positive.</exception>
    public BellLaw Changed(LawChange change)
    {
        if (change.Levels.Count != _partials.Count || change.Decays.Count != _partials.Count || change.Levels.Any(l => l.Count != Registers))
        {
            throw new ArgumentException($"a change has {_partials.Count} partials in {Registers} registers", nameof(change));
        }

        if (change.Decays.Any(d => !(d > 0)))
        {
            throw new ArgumentException("decays are multiplied by positive numbers", nameof(change));
        }

        return new BellLaw(_partials.Select((p, i) => p.Changed(change.Levels[i], change.Decays[0], change.Decays[i], change.Tierce)).ToItems());
    }

    /// <summary>The names of the partials the law knows, lowest first: "hum" to "double octave".</summary>
    public IEnumerable<string> PartialNames => _partials.Select(p => p.Name);

    /// <summary>A default bell.</summary>
    /// <param name="note">Its key.</param>
    /// <param name="strikeNote">The pitch by which it is named.</param>
    /// <param name="strike">The frequency of its strike note.</param>
    /// <param name="level">Its level; at 0 dB the squares of its partials' amplitudes add up to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive and finite.</exception>
    public Bell BellAt(WrittenNote note, StrikeNote strikeNote, Hertz strike, Decibels level) =>
        new(note, strikeNote, strike, Scaled(PartialsAt(strike), level), IsMeasured: false);

    /// <summary>The partials of a default bell with their levels, lowest first.</summary>
    internal IEnumerable<LevelledPartial> PartialsAt(Hertz strike)
    {
        if (!(strike.Value > 0) || double.IsInfinity(strike.Value))
        {
            throw new ArgumentOutOfRangeException(nameof(strike), strike.Value, "a strike frequency is positive and finite (Hz)");
        }

        return _partials.Select(p => new LevelledPartial(
            p.Name,
            new Hertz(strike.Value * Between(p.Ratios, strike)),
            new Decibels(Between(p.Levels, strike)),
            p.DecayAt(strike)));
    }

    /// <summary>Amplitudes from levels: squares add up to 1, then all are scaled by the bell's level.</summary>
    internal static Items<Partial> Scaled(IEnumerable<LevelledPartial> partials, Decibels level)
    {
        var list = partials.OrderBy(p => p.Frequency.Value).ToList();
        var norm = Math.Sqrt(list.Sum(p => p.Level.AmplitudeFactor * p.Level.AmplitudeFactor));
        return list
            .Select(p => new Partial(p.Name, p.Frequency, p.Level.AmplitudeFactor / norm * level.AmplitudeFactor, p.Decay))
            .ToItems();
    }

    /// <summary>Reads the shipped table; a broken one is a fault of the build, so it throws.</summary>
    internal static BellLaw Parse(string table) => new(table
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Where(line => line[0] != '#')
        .Skip(1)
        .Select(line => ParsePartial(line.TrimEnd('\r').Split('\t')))
        .ToItems());

    private static LawPartial ParsePartial(string[] cells) => new(
        cells[0],
        cells[1..(1 + Registers)].Select(Number).ToItems(),
        cells[(1 + Registers)..(1 + (2 * Registers))].Select(Number).ToItems(),
        cells[9] == "" ? 0 : Number(cells[9]),
        cells[10] == "" ? 0 : Number(cells[10]));

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private static double Between(Items<double> registers, Hertz strike)
    {
        var octaves = Math.Clamp(Math.Log2(strike.Value / LowestRegister), 0, Registers - 1);
        var lower = Math.Min((int)octaves, Registers - 2);
        return registers[lower] + ((octaves - lower) * (registers[lower + 1] - registers[lower]));
    }

    // One row of the table; the hum has Excess 0.
    private sealed record LawPartial(string Name, Items<double> Ratios, Items<double> Levels, double Excess, double Slope)
    {
        // T60 of the hum times its strike frequency (s Hz): an estimate good to 40 %.
        private const double HumLaw = 22000;

        // By what T60 of the hum, and of this partial beyond that, differ from the law.
        private double HumFactor { get; init; } = 1;

        private double OwnFactor { get; init; } = 1;

        // C5, the frequency for which the excess of a partial's decay over the hum's is given, as the table has it (Hz).
        private const double ExcessAt = 523.25;

        public Seconds DecayAt(Hertz strike)
        {
            var humRate = 60 / (HumFactor * HumLaw / strike.Value);
            return new Seconds(OwnFactor * 60 / (humRate + (Excess * Math.Pow(strike.Value / ExcessAt, Slope))));
        }

        public LawPartial Changed(Items<double> louder, double hum, double own, double? tierce) => this with
        {
            Ratios = Name == "tierce" && tierce is { } ratio ? Ratios.Select(_ => ratio).ToItems() : Ratios,
            Levels = Levels.Zip(louder, (l, more) => l + more).ToItems(),
            HumFactor = HumFactor * hum,
            OwnFactor = Excess == 0 ? OwnFactor : OwnFactor * own,
        };
    }
}

/// <summary>A partial with its level instead of its amplitude.</summary>
/// <param name="Name">The founder's name.</param>
/// <param name="Frequency">Its frequency.</param>
/// <param name="Level">Its level at the stroke, re the bell's strongest partial or any other common mark.</param>
/// <param name="Decay">Its T60.</param>
internal sealed record LevelledPartial(string Name, Hertz Frequency, Decibels Level, Seconds Decay);
