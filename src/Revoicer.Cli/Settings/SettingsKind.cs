using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Streams;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Cli.Settings;

/// <summary>A kind of settings, of which some ship under a name and others are files of the player.</summary>
/// <typeparam name="T">What such a file describes.</typeparam>
/// <param name="Word">What it is called: "tower".</param>
/// <param name="Names">The names that ship.</param>
/// <param name="Shipped">The file of one that ships, by its name.</param>
/// <param name="Read">Reads a file: its name, its text.</param>
internal sealed record SettingsKind<T>(
    string Word, Items<string> Names, Func<string, string> Shipped, Func<string, string, Reading<T>> Read)
    where T : class
{
    private const int LargestBytes = 1024 * 1024;

    /// <summary>
    /// What a shipped name or a file stands for; null, with every problem told, where it cannot be read. A shipped name is
    /// one without an ending, so a file beside it is reached by its ending or its folder. The file is only read.
    /// </summary>
    public Settings<T>? Open(string nameOrFile, TextWriter error)
    {
        if (Names.Contains(nameOrFile))
        {
            var shipped = Told.Value(Read(nameOrFile + ".toml", Shipped(nameOrFile)), error);
            return shipped is null ? null : new Settings<T>(shipped, $"{nameOrFile}, which ships", null);
        }

        if (!Path.Exists(nameOrFile))
        {
            error.Say($"{nameOrFile}: no {Word} of that name ships, and there is no such file; expected one of {string.Join(", ", Names)}, or a file");
            return null;
        }

        var own = TextFile.Read(nameOrFile, $"a {Word} file", LargestBytes, error) is { } text
            ? Told.Value(Read(nameOrFile, text), error)
            : null;
        return own is null ? null : new Settings<T>(own, $"the file {nameOrFile}", nameOrFile);
    }
}

/// <summary>Settings as they were found.</summary>
/// <param name="Value">What they say.</param>
/// <param name="Source">Where they come from, in words: "bright, which ships".</param>
/// <param name="File">The file that was read; null where they ship.</param>
internal sealed record Settings<T>(T Value, string Source, string? File);

/// <summary>The kinds there are.</summary>
internal static class SettingsKinds
{
    public static SettingsKind<Tower> Tower { get; } = new("tower", ShippedTowers.Names, ShippedTowers.Text, TowerFile.Read);

    public static SettingsKind<Sound> Sound { get; } = new("sound", ShippedSounds.Names, ShippedSounds.Text, SoundFile.Read);
}
