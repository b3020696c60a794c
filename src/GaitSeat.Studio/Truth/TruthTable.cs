using System.Globalization;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The per-frame table of a truth file: comma-separated, one row a frame, columns by name.</summary>
internal static class TruthTable
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    public static void Write(string path, IReadOnlyList<FrameTruth> rows)
    {
        var text = new StringBuilder("frame,t");
        foreach (var name in FrameTruth.PointNames) text.Append(Plain, $",{name}_x,{name}_y,{name}_vis");
        text.Append(",stride_phase,px_per_m,yaw_deg,rider_px_height,rider_full_in_frame,thigh_deg,trunk_deg,rise_cm,tread_fwd_of_bar_cm,ankle_fwd_of_hip_cm,bounce_cm,facing");
        foreach (var name in FrameTruth.PointNames) text.Append(Plain, $",{name}_X,{name}_Y,{name}_Z");
        text.Append('\n');
        foreach (var row in rows) AppendRow(text, row);
        File.WriteAllText(path, text.ToString());
    }

    /// <exception cref="InvalidDataException">A needed column is missing or a cell is no number; says row and column.</exception>
    public static IReadOnlyList<FrameTruth> Read(string path)
    {
        var lines = File.ReadAllLines(path);
        if (lines.Length == 0) throw new InvalidDataException($"'{path}' is empty; a header line is needed.");
        var columns = lines[0].Split(',').Select((name, i) => (name, i)).ToDictionary(c => c.name, c => c.i, StringComparer.Ordinal);
        return [.. lines.Skip(1).Where(l => l.Length > 0).Select((line, i) => Row(new Cells(path, i + 2, columns, line.Split(','))))];
    }

    private static void AppendRow(StringBuilder text, FrameTruth row)
    {
        text.Append(Plain, $"{row.Frame},{row.TimeSeconds:F5}");
        foreach (var name in FrameTruth.PointNames)
        {
            var point = row[name];
            text.Append(Plain, $",{point.Px.X:F3},{point.Px.Y:F3},{(int)point.Visibility}");
        }

        text.Append(Plain, $",{row.StridePhase:F5},{row.PxPerM:F3},{row.YawDeg:F3},{row.RiderPxHeight:F2},{(row.RiderFullInFrame ? 1 : 0)}");
        text.Append(Plain, $",{row.ThighDeg:F4},{row.TrunkDeg:F4},{row.RiseCm:F4},{row.TreadFwdOfBarCm:F4},{row.AnkleFwdOfHipCm:F4},{row.BounceCm:F4},{FacingCell(row.Facing)}");
        foreach (var name in FrameTruth.PointNames)
        {
            var metres = row[name].Metres ?? throw new InvalidOperationException($"Point '{name}' of frame {row.Frame} has no place in space.");
            text.Append(Plain, $",{metres.Forward:F5},{metres.Up:F5},{metres.Near:F5}");
        }

        text.Append('\n');
    }

    private static FrameTruth Row(Cells cells) => new()
    {
        Frame = (int)cells["frame"],
        TimeSeconds = cells["t"],
        Points = FrameTruth.PointNames.ToDictionary(n => n, n => Point(cells, n), StringComparer.Ordinal),
        StridePhase = cells["stride_phase"],
        PxPerM = cells["px_per_m"],
        YawDeg = cells["yaw_deg"],
        RiderPxHeight = cells["rider_px_height"],
        RiderFullInFrame = cells["rider_full_in_frame"] != 0,
        ThighDeg = cells["thigh_deg"],
        TrunkDeg = cells["trunk_deg"],
        RiseCm = cells["rise_cm"],
        TreadFwdOfBarCm = cells["tread_fwd_of_bar_cm"],
        AnkleFwdOfHipCm = cells.Optional("ankle_fwd_of_hip_cm"),
        BounceCm = cells["bounce_cm"],
        Facing = cells.Optional("facing") switch { > 0 => Facing.Right, < 0 => Facing.Left, _ => null },
    };

    private static int FacingCell(Facing? facing) => facing switch { Facing.Right => 1, Facing.Left => -1, _ => 0 };

    private static PointTruth Point(Cells cells, string name) => new(
        new PointPx(cells[name + "_x"], cells[name + "_y"]),
        (PointVisibility)(int)cells[name + "_vis"],
        cells.Optional(name + "_X") is { } x ? new Point3(x, cells[name + "_Y"], cells[name + "_Z"]) : null);

    private sealed record Cells(string Path, int Line, Dictionary<string, int> Columns, string[] Values)
    {
        public double this[string column] =>
            Optional(column) ?? throw new InvalidDataException($"'{Path}' has no column '{column}'.");

        public double? Optional(string column)
        {
            if (!Columns.TryGetValue(column, out var at)) return null;
            return at < Values.Length && double.TryParse(Values[at], NumberStyles.Float, Plain, out var value)
                ? value
                : throw new InvalidDataException($"'{Path}' line {Line}, column '{column}': a number is needed.");
        }
    }
}
