using System.ComponentModel;
using System.Globalization;
using GaitSeat.Cli.Privacy;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Gathers a dataset's small files into few large ones, with the pages that describe them.</summary>
public sealed class CompactCommand(AnsiConsoles consoles) : Command<CompactCommand.Arguments>
{
    private const double BytesPerMegabyte = 1e6;

    public sealed class Arguments : LoggedArguments
    {
        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset to compact; the copy goes to its folder 'compact'. Its own files stay as they are.")]
        public string Dataset { get; init; } = "";

        [CommandOption("--title <TEXT>")]
        [Description("A line that names the dataset. This and the next three are kept in the dataset's about.json and need be said once.")]
        public string? Title { get; init; }

        [CommandOption("--creator <NAME>")]
        [Description("Who made it: a person, a school.")]
        public string? Creator { get; init; }

        [CommandOption("--licence <LICENCE>")]
        [Description("An SPDX identifier such as CC-BY-4.0, or the address of a licence. Without one others may do nothing with the data but by leave.")]
        public string? Licence { get; init; }

        [CommandOption("--url <ADDRESS>")]
        [Description("Where the dataset can be had.")]
        public string? Url { get; init; }
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var dataset = Datasets.OpenExisting(settings.Dataset).Folder;
        AuditNote.Add(dataset, settings.By, "compacted", "all tables", null, new HashSet<string>(), Path.Combine(dataset, "compact"));
        var about = DatasetAbout.Keep(dataset, new(settings.Title, settings.Creator, settings.Licence, settings.Url));
        var summary = Compactor.Run(dataset, TimeProvider.System, cancellationToken);
        DatasetPages.Write(dataset, about, DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime), ProcessCommand.SoftwareVersion);
        foreach (var table in summary.Rows.Where(r => r.Value > 0)) consoles.RawOut.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{table.Key}: {table.Value} rows"));
        consoles.RawOut.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{summary.Written} parts written, {summary.Kept} held already; {summary.SourceFiles} files with {summary.SourceBytes / BytesPerMegabyte:0.0} MB in {summary.Written + summary.Kept} with {summary.Bytes / BytesPerMegabyte:0.0} MB"));
        consoles.RawOut.WriteLine($"what it holds: {Path.Combine(settings.Dataset, "compact", "README.md")}");
        consoles.RawOut.WriteLine("For this house: names of files and free text are in it, and nobody's consent to exports was asked. To hand data on: gaitseat export parquet");
        var names = Dataset.Open(dataset).Clips().Select(c => c.ClipFile).Where(PersonName.LooksLikeOneIn).Distinct(StringComparer.Ordinal).Count();
        if (names > 0) consoles.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"warning: {names} values of clip_file look like a person's name."));
        foreach (var problem in summary.Problems) consoles.Error.WriteLine($"not compacted: {problem}");
        return summary.Problems.Count == 0 ? ExitCodes.Done : ExitCodes.SomeSetAside;
    }
}
