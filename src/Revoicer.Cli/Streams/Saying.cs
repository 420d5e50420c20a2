using Revoicer.Text;

namespace Revoicer.Cli.Streams;

/// <summary>How sentences are said to the player, one a line.</summary>
internal static class Saying
{
    /// <summary>Says a sentence on a line of its own, whatever names stand in it; nothing where there is none.</summary>
    public static void Say(this TextWriter writer, string? sentence)
    {
        if (sentence is not null)
        {
            writer.Write(VisibleText.OneLine(sentence) + "\n");
        }
    }

    /// <summary>Says several sentences.</summary>
    public static void Say(this TextWriter writer, IEnumerable<string> sentences)
    {
        foreach (var sentence in sentences)
        {
            writer.Say(sentence);
        }
    }
}
