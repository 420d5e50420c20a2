using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Sounds;

/// <summary>The sound settings that travel with the program.</summary>
public static class ShippedSounds
{
    /// <summary>The name of the sound for which arrangements are made unless another is named.</summary>
    public const string DefaultName = "balanced";

    /// <summary>The names by which a shipped sound is asked for, from the lightest to the heaviest.</summary>
    public static Items<string> Names { get; } = ["bright", DefaultName, "full"];

    /// <summary>The sound for which arrangements are made unless another is named.</summary>
    public static Sound Default { get; } = Named(DefaultName);

    /// <summary>A shipped sound by its name.</summary>
    /// <exception cref="ArgumentException">No sound of that name ships.</exception>
    public static Sound Named(string name) => SoundFile.Read(name + ".toml", Text(name)) switch
    {
        Reading<Sound>.Accepted { Value: var sound } => sound,
        var refused => throw new InvalidOperationException($"the shipped sound '{name}' cannot be read: {refused}"),
    };

    /// <summary>What the file of a shipped sound says of itself.</summary>
    /// <exception cref="ArgumentException">No sound of that name ships.</exception>
    public static string About(string name) => LeadingComment.Of(Text(name));

    /// <summary>The file of a shipped sound, as a pattern for one's own.</summary>
    /// <exception cref="ArgumentException">No sound of that name ships.</exception>
    public static string Text(string name) => Names.Contains(name)
        ? Embedded.Text($"Revoicer.Sounds.Settings.{name}.toml")
        : throw new ArgumentException($"no sound '{name}' ships; these do: {string.Join(", ", Names)}", nameof(name));
}
