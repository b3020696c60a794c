using System.ComponentModel;
using System.Globalization;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Gathers a dataset's small files into few large ones, with the pages that describe them: what is handed to others.</summary>
public sealed class CompactCommand(AnsiConsoles consoles) : Command<CompactCommand.Arguments>
{
    private const double BytesPerMegabyte = 1e6;

    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset to compact; the copy goes to its folder 'compact'. Its own files stay as they are.")]
        public string Dataset { get; init; } = "";
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var summary = Compactor.Run(settings.Dataset, TimeProvider.System, cancellationToken);
        foreach (var table in summary.Rows.Where(r => r.Value > 0)) consoles.RawOut.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{table.Key}: {table.Value} rows"));
        consoles.RawOut.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{summary.Written} parts written, {summary.Kept} held already; {summary.SourceFiles} files with {summary.SourceBytes / BytesPerMegabyte:0.0} MB in {summary.Written + summary.Kept} with {summary.Bytes / BytesPerMegabyte:0.0} MB"));
        foreach (var problem in summary.Problems) consoles.Error.WriteLine($"not compacted: {problem}");
        return summary.Problems.Count == 0 ? ExitCodes.Done : ExitCodes.SomeSetAside;
    }
}
