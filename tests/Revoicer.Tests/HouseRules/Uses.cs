using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;
using Revoicer.Music;

namespace Revoicer.Tests.HouseRules;

/// <summary>What each type of the library uses, as its compiled form says, and which of that a table does not allow.</summary>
internal static class Uses
{
    private const string Library = "Revoicer";

    private static readonly Lazy<Use[]> Loaded = new(Load);

    private sealed record Use(string User, string UserNamespace, string Used, string UsedNamespace, string UsedMember);

    /// <summary>Uses of a room by another that may not use it: "Music -> Text: Beats uses Place". Sorted, each once.</summary>
    public static string[] WrongArrows(IReadOnlyDictionary<string, string[]> mayUse) => Told(
        from use in Loaded.Value
        where IsOurs(use.UsedNamespace)
        let user = RoomOf(use.UserNamespace)
        let used = RoomOf(use.UsedNamespace)
        where user != used && !Reached(user, mayUse).Contains(used)
        select $"{user} -> {used}: {use.User} uses {use.Used}");

    /// <summary>Uses of a room from outside it, other than of the types it is to be known by. The journey may use all.</summary>
    public static string[] PastTheDoor(IReadOnlyDictionary<string, string[]> doors) => Told(
        from use in Loaded.Value
        from door in doors
        where RoomOf(use.UserNamespace) is var user && user != door.Key && user != Rooms.Journey
        where IsUnder(use.UsedNamespace, $"{Library}.{door.Key}") && !door.Value.Contains(use.Used.Split('.', '+', '/')[2])
        select $"{use.User} uses {use.Used}");

    /// <summary>Uses of another library outside the places that may know it.</summary>
    public static string[] StrayLibraries(IReadOnlyDictionary<string, string[]> places) => Told(
        from use in Loaded.Value
        from library in places
        where IsUnder(use.UsedNamespace, library.Key) && !library.Value.Any(place => IsUnder(use.UserNamespace, place))
        select $"{use.User} uses {use.Used}");

    /// <summary>Uses of the given types. Sequences that the compiler writes out ask for the thread they run on; that is no use.</summary>
    public static string[] Of(string[] types) => Told(
        from use in Loaded.Value
        where types.Contains(use.Used) && !use.UsedMember.Contains("CurrentManagedThreadId", StringComparison.Ordinal)
        select $"{use.User} uses {use.Used}");

    /// <summary>The rooms that have a type.</summary>
    public static string[] RoomsFound() => Told(Loaded.Value.Select(use => RoomOf(use.UserNamespace)));

    private static Use[] Load()
    {
        var library = new ArchLoader().LoadAssemblies(typeof(Beats).Assembly).Build();

        // A type parameter stands in no namespace.
        var uses =
            from type in library.Types
            where IsOurs(type.Namespace.FullName)
            from dependency in type.Dependencies
            where dependency.Target.Namespace is not null
            select new Use(
                type.FullName,
                type.Namespace.FullName,
                dependency.Target.FullName,
                dependency.Target.Namespace.FullName,
                dependency is MethodCallDependency call ? call.TargetMember.Name : "");
        return [.. uses.Distinct()];
    }

    private static HashSet<string> Reached(string room, IReadOnlyDictionary<string, string[]> mayUse)
    {
        var reached = new HashSet<string>();
        var open = new Queue<string>(mayUse.GetValueOrDefault(room, []));
        while (open.TryDequeue(out var next))
        {
            if (reached.Add(next))
            {
                foreach (var further in mayUse.GetValueOrDefault(next, []))
                {
                    open.Enqueue(further);
                }
            }
        }

        return reached;
    }

    private static string RoomOf(string space) => space == Library ? Rooms.Journey : space.Split('.')[1];

    private static bool IsOurs(string space) => IsUnder(space, Library);

    private static bool IsUnder(string space, string start) =>
        space == start || space.StartsWith(start + ".", StringComparison.Ordinal);

    private static string[] Told(IEnumerable<string> sentences) => [.. sentences.Distinct().Order(StringComparer.Ordinal)];
}
