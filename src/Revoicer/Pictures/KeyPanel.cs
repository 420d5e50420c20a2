using Revoicer.Values;

namespace Revoicer.Pictures;

/// <summary>The keys under one tower, sound and layout.</summary>
/// <param name="Name">What tells it from the other panels.</param>
/// <param name="Keys">The keys, rising.</param>
public sealed record KeyPanel(string Name, Items<KeyBar> Keys);
