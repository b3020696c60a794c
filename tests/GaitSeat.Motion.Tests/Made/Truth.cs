using System.Globalization;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Motion.Tests.Made;

internal sealed record TrueStride(double Sit, double Top, double Next, double Rise, double ThighSit, double TrunkSit, double Swing);

/// <summary>Exact point positions of a rendered clip with known truth, as sightings: no image, no model.</summary>
internal sealed record Truth(Sightings Sightings, double StatureCm, double ShankCm, string Gait, double PxPerM, IReadOnlyList<TrueStride> Strides)
{
    private static readonly (BodyPoint Point, string Column)[] Columns =
    [
        (BodyPoint.Ear, "ear"), (BodyPoint.Shoulder, "shoulder"), (BodyPoint.Elbow, "elbow"), (BodyPoint.Wrist, "wrist"), (BodyPoint.Hip, "hip"),
        (BodyPoint.Knee, "knee"), (BodyPoint.Ankle, "ankle"), (BodyPoint.Heel, "heel"), (BodyPoint.Toe, "toe"),
    ];

    /// <summary>The folder with the rendered clips, or null: GAITSEAT_SHARED, else a folder "shared" beside the checkout.</summary>
    public static string? Folder()
    {
        var roots = new List<string>();
        if (Environment.GetEnvironmentVariable("GAITSEAT_SHARED") is { Length: > 0 } given) roots.Add(given);
        for (var up = new DirectoryInfo(AppContext.BaseDirectory); up is not null; up = up.Parent) roots.Add(Path.Combine(up.FullName, "shared"));
        return roots.Select(r => Path.Combine(r, "footage", "truth")).FirstOrDefault(Directory.Exists);
    }

    public static Truth Read(string folder, string clip)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, clip + ".truth.json")));
        var root = json.RootElement;
        var strides = root.TryGetProperty("strides", out var list)
            ? list.EnumerateArray().Where(s => s.TryGetProperty("thigh_sit_deg", out _)).Select(Stride).ToList()
            : [];
        var panned = root.GetProperty("camera").GetString() != "static";
        var left = root.GetProperty("facing").GetString() == "left";
        var lines = File.ReadAllLines(Path.Combine(folder, clip + ".truth.csv"));
        var header = lines[0].Split(',');
        var rows = lines.Skip(1).Select(l => l.Split(',')).ToArray();
        double[] Column(string name)
        {
            var at = Array.IndexOf(header, name);
            return [.. rows.Select(r => double.Parse(r[at], CultureInfo.InvariantCulture))];
        }

        var n = rows.Length;
        var points = Enum.GetValues<BodyPoint>().Select(_ => PointTrack.Empty(n)).ToArray();
        foreach (var (point, column) in Columns)
        {
            points[(int)point] = new(Column(column + "_x"), Column(column + "_y"), [.. Enumerable.Repeat(1.0, n)], [.. Enumerable.Repeat(double.NaN, n)]);
        }

        var inFrame = Column("rider_full_in_frame");
        var height = Column("rider_px_height");

        // What the camera does up and down: where the saddle is seen, less where its height over the ground puts it.
        var pxPerM = Column("px_per_m");
        double[] saddleX = Steps(Column("saddle_x")), times = Column("t");
        double[] camera = [.. Column("saddle_y").Zip(Column("saddle_Y"), pxPerM).Select(v => v.First + v.Second * v.Third)];
        var speed = (left ? -1 : 1) * root.GetProperty("speed_m_s").GetDouble();
        double[] groundX = [.. saddleX.Select((s, i) => i == 0 ? 0 : s - speed * pxPerM[i] * (times[i] - times[i - 1]))];
        var still = MadeCamera.Still(n);
        var sightings = new Sightings
        {
            WidthPx = root.GetProperty("width").GetInt32(),
            HeightPx = root.GetProperty("height").GetInt32(),
            TimeSeconds = Column("t"),
            Rider = [.. height.Select(h => (BoxPx?)new BoxPx(0, 0, h / 2, h))],
            Horse = new BoxPx?[n],
            Facing = [.. Enumerable.Repeat(left ? Facing.Left : Facing.Right, n)],
            KnownTurnDeg = Column("yaw_deg"),
            Reason = [.. inFrame.Select(v => v > 0 ? FrameReason.None : FrameReason.OutOfPicture)],
            CutBefore = new bool[n],
            Points = points,
            PointsAreJoints = true,
            Trunk = MadeCamera.Still(n) with { XPx = Steps(Column("saddle_x")), YPx = Steps(Column("saddle_y")) },
            Surroundings = panned ? still with { XPx = groundX, YPx = Steps(camera) } : still,
        };
        return new(sightings, 100 * root.GetProperty("stature_m").GetDouble(), 100 * root.GetProperty("shank_len_m").GetDouble(),
            root.GetProperty("gait").GetString()!, root.GetProperty("px_per_m_mean").GetDouble(), strides);
    }

    private static TrueStride Stride(JsonElement s)
    {
        double Number(string name) => s.GetProperty(name).GetDouble();
        return new(Number("sit_s"), Number("top_s"), Number("next_sit_s"), Number("rise_cm"), Number("thigh_sit_deg"), Number("trunk_sit_deg"), Number("drift_swing_cm"));
    }

    private static double[] Steps(double[] at) => [.. at.Select((v, i) => i == 0 ? 0 : v - at[i - 1])];
}
