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
        if (towers.Contains(null) || sounds.Contains(null))
        {
            return null;
        }

        Items<LayoutWish> layouts = request.Layouts.Count == 0 ? [LayoutWish.Above] : request.Layouts.Distinct().ToItems();
        var keys = Enumerable.Range(request.Keys.From, request.Keys.To - request.Keys.From + 1).ToItems();
        return new OpenedSettings(
            new SettingChoices(towers.Select(t => t!.Value).ToItems(), sounds.Select(s => s!.Value).ToItems(), layouts, keys),
            [.. towers.Select(t => t!.File).Concat(sounds.Select(s => s!.File)).OfType<string>()]);
    }

    private static List<Settings<T>?> Open<T>(SettingsKind<T> kind, IReadOnlyList<string> named, IReadOnlyList<string> otherwise, TextWriter error)
        where T : class =>
        [.. (named.Count == 0 ? otherwise : named).Distinct().Select(name => kind.Open(name, error))];
}
