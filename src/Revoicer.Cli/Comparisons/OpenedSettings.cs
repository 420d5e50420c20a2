using Revoicer.Bells;
using Revoicer.Cli.Settings;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Cli.Comparisons;

/// <summary>The settings of a comparison, read.</summary>
/// <param name="Choices">What is combined.</param>
/// <param name="Files">The files that were read.</param>
internal sealed record OpenedSettings(SettingChoices Choices, IReadOnlyList<string> Files)
{
    /// <summary>Opens all towers and sounds; null, with every problem told, where one cannot be read.</summary>
    public static OpenedSettings? Of(CompareRequest request, TextWriter error)
    {
        var towers = Open(SettingsKinds.Tower, request.Towers, [ShippedTowers.DefaultName], error);
        var sounds = Open(SettingsKinds.Sound, request.Sounds, ShippedSounds.Names, error);
        if (towers is null || sounds is null)
        {
            return null;
        }

        Items<LayoutWish> layouts = request.Layouts.Count == 0 ? [LayoutWish.Above] : request.Layouts.Distinct().ToItems();
        var keys = Enumerable.Range(request.Keys.From, request.Keys.To - request.Keys.From + 1).ToItems();
        return new OpenedSettings(
            new SettingChoices(
                ToldApart(towers, t => t.Name, (t, name) => t with { Name = name }),
                ToldApart(sounds, s => s.Name, (s, name) => s with { Name = name }),
                layouts,
                keys),
            [.. towers.Select(t => t.File).Concat(sounds.Select(s => s.File)).OfType<string>()]);
    }

    private static Settings<T>[]? Open<T>(SettingsKind<T> kind, IReadOnlyList<string> named, IReadOnlyList<string> otherwise, TextWriter error)
        where T : class
    {
        Settings<T>?[] opened = [.. (named.Count == 0 ? otherwise : named).Distinct().Select(name => kind.Open(name, error))];
        return opened.Contains(null) ? null : [.. opened.OfType<Settings<T>>()];
    }

    // What says the same is one setting. A copy that was changed and kept its name is called by its file as well.
    private static Items<T> ToldApart<T>(IReadOnlyList<Settings<T>> opened, Func<T, string> nameOf, Func<T, string, T> named)
        where T : class
    {
        var different = opened.DistinctBy(s => s.Value).ToArray();
        return different
            .Select(s => s.File is { } file && different.Count(o => nameOf(o.Value) == nameOf(s.Value)) > 1
                ? named(s.Value, $"{nameOf(s.Value)} ({file})")
                : s.Value)
            .ToItems();
    }
}
