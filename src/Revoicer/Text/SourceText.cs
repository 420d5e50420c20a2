namespace Revoicer.Text;

/// <summary>A text with its name, that turns offsets into places.</summary>
internal sealed class SourceText
{
    private readonly int[] _lineStarts;

    public SourceText(string name, string text)
    {
        Name = name;
        Text = text;
        _lineStarts = [0, .. Enumerable.Range(0, text.Length).Where(i => text[i] == '\n').Select(i => i + 1)];
    }

    public string Name { get; }

    public string Text { get; }

    /// <summary>The place of a run of characters; it ends with its line. An offset past the end means the end.</summary>
    public Place At(int offset, int length)
    {
        offset = Math.Clamp(offset, 0, Text.Length);
        var found = Array.BinarySearch(_lineStarts, offset);
        var line = found >= 0 ? found : ~found - 1;
        var start = _lineStarts[line];
        var end = Text.IndexOf('\n', start);
        var lineText = Text[start..(end < 0 ? Text.Length : end)].TrimEnd('\r');
        var column = Math.Min(offset - start, lineText.Length);
        return new Place(Name, line + 1, column + 1, Math.Clamp(length, 1, Math.Max(1, lineText.Length - column)), lineText);
    }
}
