using Revoicer.Text;
using Revoicer.Values;

namespace Revoicer.Bells;

/// <summary>The towers that travel with the program: usual sizes of instrument, in an invented harbour town.</summary>
public static class ShippedTowers
{
    /// <summary>The name of the tower for which arrangements are made unless another is named.</summary>
    public const string DefaultName = "harbour-47";

    /// <summary>The names by which a shipped tower is asked for, smallest tower first.</summary>
    public static Items<string> Names { get; } =
        ["chapel-23", "custom-house-37", DefaultName, "lighthouse-49", "great-56"];

    /// <summary>The tower of 47 bells, for which arrangements are made unless another is named.</summary>
    public static Tower Default { get; } = Named(DefaultName);

    /// <summary>A shipped tower by its name.</summary>
    /// <exception cref="ArgumentException">No tower of that name ships.</exception>
    public static Tower Named(string name) => TowerFile.Read(name + ".toml", Text(name)) switch
    {
        Reading<Tower>.Accepted { Value: var tower } => tower,
        var refused => throw new InvalidOperationException($"the shipped tower '{name}' cannot be read: {refused}"),
    };

    /// <summary>What the file of a shipped tower says of itself: its size, and where that comes from.</summary>
    /// <exception cref="ArgumentException">No tower of that name ships.</exception>
    public static string About(string name) => LeadingComment.Of(Text(name));

    /// <summary>The file of a shipped tower, as a pattern for one's own.</summary>
    /// <exception cref="ArgumentException">No tower of that name ships.</exception>
    public static string Text(string name) => Names.Contains(name)
        ? Embedded.Text($"Revoicer.Bells.Towers.{name}.toml")
        : throw new ArgumentException($"no tower '{name}' ships; these do: {string.Join(", ", Names)}", nameof(name));
}
