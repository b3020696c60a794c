using Spectre.Console;

namespace GaitSeat.Cli;

/// <summary>The two outlets: results go to the given console; progress and complaints to standard error, so that output can be piped.</summary>
public sealed record AnsiConsoles(IAnsiConsole Out, IAnsiConsole Error, TextWriter RawOut)
{
    /// <summary>Columns where there is no terminal to ask: wide enough that a line of the summary stays one line.</summary>
    private const int WidthWithoutTerminal = 240;

    public static AnsiConsoles Create() => new(To(Console.Out), To(Console.Error), Console.Out);

    private static IAnsiConsole To(TextWriter writer)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(writer) });
        if (!console.Profile.Out.IsTerminal) console.Profile.Width = WidthWithoutTerminal;
        return console;
    }
}
