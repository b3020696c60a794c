using GaitSeat.Model;
using GaitSeat.Store;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Cli.Accuracy;

/// <summary>Every error of an accuracy run, one row a stride and measure, with the circumstances it was filmed in.</summary>
public static class ErrorsTable
{
    public const string FileName = "errors.parquet";

    private const string NotKnown = "Not known.";

    /// <summary>Writes the file; one of the same name is replaced.</summary>
    public static Task WriteAsync(IReadOnlyList<ClipErrors> clips, string path, CancellationToken ct)
    {
        MeasureError[] rows = [.. clips.SelectMany(c => c.Errors)];
        var kinds = rows.SelectMany(r => r.Circumstances.Groups.Keys).Distinct().ToArray();
        LooseColumn<MeasureError>[] columns = [.. Errors(), .. kinds.Select(Kind)];
        return new LooseTable<MeasureError>("errors", "Measured beside true values.", columns).WriteAsync(rows, path, ct);
    }

    private static IEnumerable<LooseColumn<MeasureError>> Errors() =>
    [
        LooseColumn.Text<MeasureError>("clip", "Name of the clip.", r => r.Clip),
        LooseColumn.Real<MeasureError>("start_s", "s", "Where the measured stride begins.", r => r.StartSeconds),
        LooseColumn.Real<MeasureError>("true_start_s", "s", "Where the true stride begins.", r => r.TrueStartSeconds),
        LooseColumn.Text<MeasureError>("measure", "Column name of the measure.", r => MeasureCatalogue.Get(r.Measure).Column),
        LooseColumn.Text<MeasureError>("unit", "Unit of truth, measured, se and error.", r => MeasureCatalogue.Get(r.Measure).Unit),
        LooseColumn.Real<MeasureError>("truth", "", "The true value.", r => r.Truth),
        LooseColumn.Real<MeasureError>("measured", "", "The measured value.", r => r.Measured.Value),
        LooseColumn.Real<MeasureError>("se", "", "Its standard error.", r => r.Measured.StandardError, NotKnown),
        LooseColumn.Real<MeasureError>("half_width_95", "", "Half width of its 95 % interval.", r => r.Measured.HalfWidth95, NotKnown),
        LooseColumn.Real<MeasureError>("error", "", "Measured minus true.", r => r.Error),
        LooseColumn.Whole<MeasureError>("held", "", "1 where the 95 % interval holds the truth.", r => r.HeldByInterval ? 1 : 0),
        LooseColumn.Whole<MeasureError>("trusted", "", "0 where the row says it is not to be trusted.", r => r.Trusted ? 1 : 0),
        LooseColumn.Text<MeasureError>("quality", "`good`, or the named reasons for care joined by `+`.", r => r.Quality),
        LooseColumn.Real<MeasureError>("true_turn_deg", "deg", "Mean true turn over the stride, + turned away from the camera.", r => r.Circumstances.TurnDeg, NotKnown),
        LooseColumn.Real<MeasureError>("true_yaw_deg", "deg", "Mean size of the true yaw over the stride.", r => r.Circumstances.YawDeg),
        LooseColumn.Real<MeasureError>("true_rider_px", "px", "Mean true height of the rider over the stride.", r => r.Circumstances.RiderPx),
    ];

    private static LooseColumn<MeasureError> Kind(string kind) => LooseColumn.Text<MeasureError>(
        "group_" + kind.Replace('-', '_'), $"Group by {kind}.", r => r.Circumstances.Groups.GetValueOrDefault(kind), "The clip does not say.");
}
