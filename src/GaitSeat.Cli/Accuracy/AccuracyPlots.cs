using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;
using GaitSeat.Study.Plots;

namespace GaitSeat.Cli.Accuracy;

/// <summary>The plots of an accuracy run, each as PNG and SVG.</summary>
internal sealed class AccuracyPlots(IReadOnlyList<ClipErrors> clips, string folder)
{
    /// <summary>The coverage every group should lie in, percent: the wider of the two goals.</summary>
    private const double LeastHeldPct = 88, MostHeldPct = 99;

    private static readonly StrideMeasure[] Shown = [.. GoalTable.Measures, StrideMeasure.TrunkLeanSit];
    private static readonly StrideMeasure[] ByGroup = [StrideMeasure.RiseHeightCm, StrideMeasure.ThighAngleSit, StrideMeasure.StirrupDriftSwingCm];

    public void Save()
    {
        Errors("agreement", "true value", e => e.Truth, agreement: true);
        Errors("error-by-turn", "true turn, deg (+ away from the camera)", e => e.Circumstances.TurnDeg, agreement: false);
        Errors("error-by-rider-height", "true rider height, px", e => e.Circumstances.RiderPx, agreement: false);
        var table = new ConditionTable(clips);
        CoveragePlot.Save(
            [.. ByGroup.Select(m => (Name(m), (IReadOnlyList<CoverageRow>)[.. table.Held(m).Select(h => new CoverageRow(h.Group, h.Count, h.HeldPct))]))],
            LeastHeldPct, MostHeldPct, Path("coverage", "png"), Path("coverage", "svg"));
        ConfusionPlot.Save(
            "Gait, time with the whole rider in the picture",
            [.. GaitTable.True.Select(g => GaitTable.NameOf(g))],
            [.. GaitTable.Called.Select(GaitTable.NameOf)],
            GaitTable.Seconds(clips),
            "s", Path("gaits", "png"), Path("gaits", "svg"));
    }

    private void Errors(string file, string over, Func<MeasureError, double> x, bool agreement) =>
        ErrorPlot.Save([.. Shown.Select(m => Panel(m, over, x, agreement))], Path(file, "png"), Path(file, "svg"));

    private ErrorPanel Panel(StrideMeasure measure, string over, Func<MeasureError, double> x, bool agreement)
    {
        var errors = clips.SelectMany(c => c.Errors).Where(e => e.Measure == measure && double.IsFinite(x(e))).ToArray();
        var limits = ErrorSummary.Of(errors.Where(e => e.Trusted)).Limits;
        (string, double)[] lines = agreement ? [(ErrorLines.Bias, limits.Bias), (ErrorLines.Lower, limits.Lower), (ErrorLines.Upper, limits.Upper)] : [];
        var unit = MeasureCatalogue.Get(measure).Unit;
        return new(
            Name(measure),
            agreement ? $"{over}, {unit}" : over,
            $"measured − true, {unit}",
            Array.ConvertAll(errors, e => x(e)),
            Array.ConvertAll(errors, e => e.Error),
            Array.ConvertAll(errors, e => !e.Trusted),
            lines,
            Running: !agreement);
    }

    private static string Name(StrideMeasure measure) => MeasureCatalogue.Get(measure).Column;

    private string Path(string name, string ending) => System.IO.Path.Combine(folder, $"{name}.{ending}");
}
