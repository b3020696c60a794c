using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Studio;
using GaitSeat.Studio.Accuracy;
using Spectre.Console;

namespace GaitSeat.Cli.Accuracy;

/// <summary>Measures clips with known truth one after the other; what was seen in each is kept as soon as it is done.</summary>
internal sealed class AccuracyRun(SeenStore store, Lazy<Workshop> workshop, PipelineSettings pipeline, IAnsiConsole console)
{
    public const string TruthEnding = ".truth.json";

    private readonly List<ClipErrors> _clips = [];
    private readonly List<MeasureError>[] _budget = [.. ErrorBudget.Stages.Select(_ => new List<MeasureError>())];

    /// <summary>The clip a truth file stands beside.</summary>
    public static string ClipOf(string truthPath) => truthPath[..^TruthEnding.Length] + ".mp4";

    public IReadOnlyList<ClipErrors> Clips => _clips;

    /// <summary>By stage of <see cref="ErrorBudget.Stages"/>; empty unless asked for.</summary>
    public IReadOnlyList<IReadOnlyList<MeasureError>> Budget => _budget;

    /// <param name="truthPath">The truth beside a clip of the same name.</param>
    /// <param name="budget">Whether to run the maths with true inputs too.</param>
    /// <param name="ct">Stops between frames.</param>
    public async Task AddAsync(string truthPath, bool budget, CancellationToken ct)
    {
        var truth = TruthFile.Read(truthPath);
        var look = await store.LookAsync(ClipOf(truthPath), pipeline, workshop, ct);
        if (look.Seen is not { } seen)
        {
            console.MarkupLineInterpolated($"{truth.Clip}: set aside ({look.Reason}): {look.Detail}");
            _clips.Add(ClipErrors.Compare(truth, ClipResult.Without(look.Reason ?? "unknown", truth.Width)));
            return;
        }

        var lengths = new BodyLengths(StatureCm: 100 * truth.StatureM);
        var measured = ClipMeasurer.Measure(seen, lengths, pipeline);
        var sightings = measured.Sightings;
        console.MarkupLineInterpolated($"[grey]{truth.Clip}: {measured.Motion.Strides.Count} strides from {sightings.Count} frames[/]");
        _clips.Add(ClipErrors.Compare(truth, new(measured.Motion, sightings.WidthPx, sightings.Count, measured.LeftOut)));
        if (!budget) return;
        foreach (var (errors, stage) in _budget.Zip(ErrorBudget.Stages)) errors.AddRange(ErrorBudget.Run(truth, sightings, lengths, pipeline.Motion, stage.Swap));
    }
}
