using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Sounds;
using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Cli.Settings;

/// <summary>Settings of one kind: those that travel with the program, by name, and the player's own, by file.</summary>
/// <typeparam name="T">Tower or sound.</typeparam>
/// <param name="Kind">The kind in a word: "tower".</param>
/// <param name="Names">The names of those that ship.</param>
/// <param name="TextOf">The file of a shipped one.</param>
/// <param name="Read">Reads a file's text under its name.</param>
internal sealed record Shipped<T>(string Kind, Items<string> Names, Func<string, string> TextOf, Func<string, string, Reading<T>> Read)
    where T : class
{
    /// <summary>The one meant by a shipped name or the name of a file; null, with every problem told, where there is none.</summary>
    public T? Find(string nameOrFile, TextWriter error)
    {
        if (Names.Contains(nameOrFile))
        {
            return Readings.Tell(Read(nameOrFile + ".toml", TextOf(nameOrFile)), error);
        }

        if (!nameOrFile.Contains('.', StringComparison.Ordinal) && !File.Exists(nameOrFile))
        {
            error.Write($"revoicer: no {Kind} '{nameOrFile}' ships; expected {string.Join(", ", Names)}, or the name of a .toml file\n");
            return null;
        }

        return TextFile.Read(nameOrFile, error) is { } text ? Readings.Tell(Read(nameOrFile, text), error) : null;
    }
}

/// <summary>The kinds of settings.</summary>
internal static class Shipped
{
    /// <summary>Towers.</summary>
    public static Shipped<Tower> Towers { get; } = new("tower", ShippedTowers.Names, ShippedTowers.Text, TowerFile.Read);

    /// <summary>Sounds.</summary>
    public static Shipped<Sound> Sounds { get; } = new("sound", ShippedSounds.Names, ShippedSounds.Text, SoundFile.Read);
}
