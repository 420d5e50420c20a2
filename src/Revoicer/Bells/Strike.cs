using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>A stroke on a bell as the ear has it: which bell, when, how loud.</summary>
/// <param name="Bell">The bell's place in <see cref="Tower.Bells"/>, from 0.</param>
/// <param name="At">When it is struck.</param>
/// <param name="Level">Touch, relative to a default stroke.</param>
public readonly record struct Strike(int Bell, Seconds At, Decibels Level);
