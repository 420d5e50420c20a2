using System.Globalization;

namespace Revoicer.Text;

/// <summary>Equal sentences stand once, with their count.</summary>
public static class Counted
{
    /// <summary>The sentences in the order in which they come first; one that comes several times ends in "(4 times)". Of one with lines under it the first line does.</summary>
    public static IEnumerable<string> Of(IEnumerable<string> sentences) =>
        sentences.GroupBy(sentence => sentence).Select(equal => equal.Count() == 1 ? equal.Key : WithCount(equal.Key, equal.Count()));

    private static string WithCount(string sentence, int count)
    {
        var end = sentence.IndexOf('\n', StringComparison.Ordinal) is var line and >= 0 ? line : sentence.Length;
        return sentence.Insert(end, string.Create(CultureInfo.InvariantCulture, $" ({count} times)"));
    }
}
