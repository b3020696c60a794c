using System.Data.Common;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Reads the smoothed signals and body points of one clip back.</summary>
public static class TrackReader
{
    private static readonly BodyPoint[] Points = Enum.GetValues<BodyPoint>();

    private static readonly string[] Columns =
    [
        "t_s", "seat_pct_leg", "bounce_pct_leg", "tread_forward_pct_leg", "thigh_angle_deg",
        .. Points.SelectMany(p => new[] { $"{p.ToTerm()}_x_px", $"{p.ToTerm()}_y_px", $"{p.ToTerm()}_confidence" }),
    ];

    private const int Signals = 5, PerPoint = 3;

    /// <returns>As it was written, the spread of the points aside, which the table has not; null where the run kept no tracks of the clip.</returns>
    /// <exception cref="DatasetException">The file is damaged.</exception>
    public static MotionTrace? Read(Dataset dataset, DatasetRun run, string clipKey)
    {
        ArgumentNullException.ThrowIfNull(dataset);
        ArgumentNullException.ThrowIfNull(run);
        var path = Path.Combine(dataset.Folder, TracksTable.Name, RunName.Of(clipKey, run.PipelineHash, run.ModelHash));
        if (!File.Exists(path)) return null;
        var rows = new List<double[]>();
        FileQuery.Each(TracksTable.Table.Info, [path], Columns, $"{run.Where} AND clip_key = {SqlText.Literal(clipKey)} ORDER BY frame", r => rows.Add(Values(r)));
        double[] Column(int i) => [.. rows.Select(r => r[i])];
        return new()
        {
            TimeSeconds = Column(0),
            SeatPctLeg = Column(1),
            BouncePctLeg = Column(2),
            TreadForwardPctLeg = Column(3),
            ThighAngleDeg = Column(4),
            Points = [.. Points.Select((_, p) => Signals + PerPoint * p).Select(c => new PointTrack(Column(c), Column(c + 1), [.. Column(c + 2).Select(v => double.IsNaN(v) ? 0 : v)], [.. rows.Select(_ => double.NaN)]))],
        };
    }

    private static double[] Values(DbDataReader row) => [.. Enumerable.Range(0, row.FieldCount).Select(i => row.IsDBNull(i) ? double.NaN : row.GetDouble(i))];
}
