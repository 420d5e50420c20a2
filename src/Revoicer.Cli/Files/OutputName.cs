namespace Revoicer.Cli.Files;

/// <summary>The common name of a run's results.</summary>
internal static class OutputName
{
    /// <summary>The endings of a draft's files, in the order in which they are told.</summary>
    public static IReadOnlyList<string> Endings { get; } = [".mid", ".txt", ".json", ".musicxml"];

    /// <summary>
    /// The name asked for, without one of the endings that will be added; else the sheet's name in this folder, with
    /// "-draft" behind it where the sheet is itself a score, so that it does not stand in the way.
    /// </summary>
    public static string Of(string? asked, string sheet)
    {
        var own = Path.GetFileNameWithoutExtension(sheet);
        var name = asked ?? (Path.GetExtension(sheet).Equals(".musicxml", StringComparison.OrdinalIgnoreCase) ? own + "-draft" : own);
        var ending = Endings.FirstOrDefault(e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase));
        return ending is null ? name : name[..^ending.Length];
    }
}
