using System.ComponentModel;
using GaitSeat.Cli.Learning;
using GaitSeat.Cli.Output;
using GaitSeat.Cli.Studies;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Pipeline.Studies;
using GaitSeat.Studio;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Makes the demo season (a riding school of our own invention) runs the main job on it and asks the demo's study of it.</summary>
public sealed class DemoCommand(AnsiConsoles consoles) : AsyncCommand<DemoCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandOption("-o|--out <FOLDER>")]
        [Description("Where footage and dataset go. Default: out/demo beside the program.")]
        public string? Out { get; init; }

        [CommandOption("--judged")]
        [Description("Make the judged season instead: invented riders whose clips are ridden but not drawn, with faults planted and judged, and let the fault models learn from it.")]
        public bool Judged { get; init; }
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var folder = settings.Out ?? Path.Combine(Places.Home, "out", "demo");
        var clips = Path.Combine(folder, "clips");
        var season = DemoSeason.Load(Path.Combine(Places.Home, "datasets", "demo-season.json"));
        if (settings.Judged) return await JudgedAsync(season, Path.Combine(folder, "judged"), cancellationToken);
        consoles.Error.MarkupLineInterpolated($"making the demo footage in {clips}");
        await season.MakeAsync(clips, new LineProgress(consoles.Error), cancellationToken);

        var summary = await ProcessCommand.RunAsync(consoles, new(clips, Path.Combine(folder, "dataset")), new PipelineSettings(), cancellationToken);
        SummaryTable.Write(consoles.Out, summary);
        await AskAsync(summary, Path.Combine(folder, "study"), cancellationToken);
        consoles.Out.WriteLine($"clips and sheet: {clips}");
        consoles.Out.WriteLine($"overlays, stills, plots: {SeasonRun.PictureFolder(summary.DatasetFolder)}");
        return ProcessCommand.ExitCodeOf(summary);
    }

    /// <summary>Planted faults, a judge who errs, and what the models make of it.</summary>
    private async Task<int> JudgedAsync(DemoSeason season, string folder, CancellationToken ct)
    {
        var demo = await JudgedDemo.RunAsync(season.JudgedClips, folder, new PipelineSettings(), ProcessCommand.SoftwareVersion, ct);
        consoles.Out.MarkupLineInterpolated($"{season.JudgedClips.Count} clips of {season.Judged?.Riders ?? 0} invented riders, {demo.Spells} spells; {season.Judged?.WrongAnswersPct ?? 0} % of the answers are wrong. Average precision on riders the models had not seen:");
        var table = new Table().Border(TableBorder.Simple).AddColumns("planted", "spells", "with it", "model", "rules", "model, against the answers", "best possible against the answers", "");
        static string N(double value) => value.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
        foreach (var f in demo.Figures) table.AddRow(f.Fault.ToTerm(), $"{f.Spells}", $"{f.Planted}", N(f.Model), N(f.Rules), N(f.AgainstAnswers), N(f.Ceiling), f.End.ToTerm());
        consoles.Out.Write(table);
        foreach (var line in demo.Lines) consoles.Out.WriteLine(line);
        consoles.Out.WriteLine($"dataset: {demo.DatasetFolder}; answers: {demo.Sheet}; cards: {Path.Combine(demo.DatasetFolder, "fault-models")}");
        return ExitCodes.Done;
    }

    /// <summary>The demo's study, by the study file that comes with the program.</summary>
    private async Task AskAsync(SeasonSummary summary, string report, CancellationToken ct)
    {
        consoles.Out.WriteLine("What the demo's study says (of invented riders):");
        // Of this run: a folder from an older program holds its run beside it.
        var (dataset, run) = (summary.DatasetFolder, summary.PipelineHash);
        var command = StudyLines.Command(Path.Combine("pipelines", Path.GetFileName(Places.DemoStudy)), dataset, run, report);
        var results = await Task.Run(() => StudyJob.Run(new(Places.DemoStudy, dataset, run, report, command, ProcessCommand.SoftwareVersion), ct), ct);
        StudyLines.Write(consoles, results, report);
    }

    private sealed class LineProgress(IAnsiConsole console) : IProgress<DemoProgress>
    {
        public void Report(DemoProgress value) => console.MarkupLineInterpolated($"[grey]  {value.ClipsDone}/{value.ClipsTotal} {value.Clip} {(value.Made ? "made" : "there already")}[/]");
    }
}
