namespace Revoicer.Cli.Files;

/// <summary>A file that is to be written.</summary>
/// <param name="Name">Its name as the player will read it, relative to the current folder or whole.</param>
/// <param name="Content">All of its bytes.</param>
internal sealed record OutputFile(string Name, ReadOnlyMemory<byte> Content);
