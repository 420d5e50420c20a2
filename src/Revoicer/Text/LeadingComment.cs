namespace Revoicer.Text;

/// <summary>What a settings file says of itself in its first line.</summary>
internal static class LeadingComment
{
    /// <summary>The first line of a text without its #; empty where it is no comment.</summary>
    public static string Of(string text) => text.StartsWith('#') ? text.Split('\n')[0].TrimStart('#').Trim() : "";
}
