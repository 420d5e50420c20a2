using System.Globalization;
using System.Text;
using Revoicer.Text;

namespace Revoicer.Sounds;

/// <summary>Writes a sound as a file that <see cref="SoundFile"/> reads back as the same.</summary>
public static class SoundWriting
{
    private const int CommentColumn = 22;

    /// <summary>The file: what it says of itself, the name, then every word with its unit and meaning; lines end in \n.</summary>
    /// <param name="sound">The sound.</param>
    /// <param name="about">What the file says of itself, in its first line; empty for nothing.</param>
    public static string Text(Sound sound, string about)
    {
        var text = new StringBuilder();
        text.Append(about.Length == 0 ? "" : $"# {string.Concat(about.Select(c => Quoted.IsVisible(c) ? c : ' '))}\n");
        text.Append("# Prices are in clash units: 100 is C4 E4 G4 struck together and left to die away. docs/sounds.md explains each word.\n");
        text.Append($"name = {InQuotes(sound.Name)}\n");
        foreach (var part in SoundWords.All.GroupBy(w => w.Part))
        {
            text.Append($"\n[{part.Key}]\n");
            foreach (var word in part)
            {
                var line = $"{word.Word} = {word.Value(sound).ToString(CultureInfo.InvariantCulture)}";
                text.Append($"{line.PadRight(CommentColumn - 1)} # {word.Unit}: {word.Meaning}\n");
            }
        }

        return text.ToString();
    }

    // A basic string of TOML 1.0: quotation mark, backslash and what cannot be seen are escaped.
    private static string InQuotes(string name) => $"\"{string.Concat(name.Select(Escaped))}\"";

    private static string Escaped(char c) => c switch
    {
        '"' => "\\\"",
        '\\' => "\\\\",
        _ when Quoted.IsVisible(c) => c.ToString(),
        _ => $"\\u{(int)c:X4}",
    };
}
