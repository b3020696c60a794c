using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>The tracks of one clip read back: smoothed body points by frame.</summary>
internal sealed class PointTrace
{
    private static readonly BodyPoint[] Points = Enum.GetValues<BodyPoint>();

    private PointTrace(List<int> frames, List<double> seconds, List<double[]> x, List<double[]> y, List<double[]> confidence) =>
        (Frames, Seconds, XPx, YPx, Confidence) = (frames, seconds, x, y, confidence);

    /// <summary>Number of the analysed frame, by row.</summary>
    internal IReadOnlyList<int> Frames { get; }

    internal IReadOnlyList<double> Seconds { get; }

    /// <summary>By row, then by <see cref="BodyPoint"/>; px of the analysed picture, NaN where not known.</summary>
    internal IReadOnlyList<double[]> XPx { get; }

    internal IReadOnlyList<double[]> YPx { get; }

    internal IReadOnlyList<double[]> Confidence { get; }

    internal static PointTrace Read(DatasetQuery query, string clipKey, DatasetRun run)
    {
        var columns = string.Join(", ", Points.SelectMany(p => new[] { $"{p.ToTerm()}_x_px", $"{p.ToTerm()}_y_px", $"{p.ToTerm()}_confidence" }));
        var trace = new PointTrace([], [], [], [], []);
        query.Each($"SELECT frame, t_s, {columns} FROM tracks WHERE clip_key = {SqlText.Literal(clipKey)} AND {run.Where} ORDER BY frame", row =>
        {
            double At(int column) => row.IsDBNull(column) ? double.NaN : row.GetDouble(column);
            ((List<int>)trace.Frames).Add(row.GetInt32(0));
            ((List<double>)trace.Seconds).Add(row.GetDouble(1));
            ((List<double[]>)trace.XPx).Add([.. Points.Select(p => At(2 + 3 * (int)p))]);
            ((List<double[]>)trace.YPx).Add([.. Points.Select(p => At(3 + 3 * (int)p))]);
            ((List<double[]>)trace.Confidence).Add([.. Points.Select(p => At(4 + 3 * (int)p))]);
        });
        return trace;
    }
}
