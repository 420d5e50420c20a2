using Revoicer.Cli;
using Revoicer.Cli.Streams;

using var interruption = new Interruption();
return CommandLine.Run(args, StandardStream.Output(), StandardStream.Error(), interruption.Token);
