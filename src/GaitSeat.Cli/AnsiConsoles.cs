using Spectre.Console;

namespace GaitSeat.Cli;

/// <summary>The two outlets: results go to the given console; progress and complaints to standard error, so that output can be piped.</summary>
public sealed record AnsiConsoles(IAnsiConsole Out, IAnsiConsole Error, TextWriter RawOut)
{
    public static AnsiConsoles Create() => new(
        AnsiConsole.Console,
        AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) }),
        Console.Out);
}
