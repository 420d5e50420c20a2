using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>One partial of a bell.</summary>
/// <param name="Name">The founder's name: "hum", "tierce", "double octave"; "partial 7" where a measured one has none.</param>
/// <param name="Frequency">Its frequency.</param>
/// <param name="Amplitude">Its amplitude just after the stroke, linear, on one scale for the whole tower; not negative.</param>
/// <param name="Decay">Its T60: the time in which it falls by 60 dB; positive.</param>
public sealed record Partial(string Name, Hertz Frequency, double Amplitude, Seconds Decay)
{
    /// <summary>kappa = 3 ln 10 / T60: the amplitude falls as exp(-kappa t), in 1/s.</summary>
    public double Kappa => 3 * Math.Log(10) / Decay.Value;
}

/// <summary>One bell of a tower.</summary>
/// <param name="Note">Its baton (and pedal): the written note.</param>
/// <param name="StrikeNote">The pitch by which it is named.</param>
/// <param name="Strike">The frequency of its strike note.</param>
/// <param name="Partials">Its partials, lowest first; at least one.</param>
/// <param name="IsMeasured">Whether the tower file gave at least one of its partials.</param>
public sealed record Bell(WrittenNote Note, StrikeNote StrikeNote, Hertz Strike, Items<Partial> Partials, bool IsMeasured);
