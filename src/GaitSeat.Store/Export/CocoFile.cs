using System.Text.Json.Nodes;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// Key points as COCO describes them (cocodataset.org, "Data format", keypoint detection): one image a frame, one annotation with the rider. The first 17 key points are COCO's own in
/// COCO's order, then heel and toe of either side. Eyes are never known, and of the side away from the camera only shoulder and hip. Positions are in the pixels of the upright clip.
/// </summary>
internal static class CocoFile
{
    private static readonly string[] Names =
    [
        "nose", "left_eye", "right_eye", "left_ear", "right_ear", "left_shoulder", "right_shoulder", "left_elbow", "right_elbow", "left_wrist", "right_wrist",
        "left_hip", "right_hip", "left_knee", "right_knee", "left_ankle", "right_ankle", "left_heel", "right_heel", "left_toe", "right_toe",
    ];

    /// <summary>Pairs of key points, counted from 1: COCO's own lines, then ankle to heel and heel to toe.</summary>
    private static readonly int[][] Skeleton =
    [
        [16, 14], [14, 12], [17, 15], [15, 13], [12, 13], [6, 12], [7, 13], [6, 7], [6, 8], [7, 9], [8, 10], [9, 11], [2, 3], [1, 2], [1, 3], [2, 4], [3, 5], [4, 6], [5, 7],
        [16, 18], [17, 19], [18, 20], [19, 21],
    ];

    /// <param name="pixels">Pixels of the clip to one of the analysed picture.</param>
    /// <param name="facingAt">The way the horse goes at a time, s.</param>
    /// <returns>The file and how many frames have a rider in it.</returns>
    internal static (string Text, int Frames) Make(ExportClip clip, PointTrace trace, double pixels, Func<double, Facing> facingAt)
    {
        var (images, annotations) = (new JsonArray(), new JsonArray());
        for (var i = 0; i < trace.Frames.Count; i++)
        {
            var facing = facingAt(trace.Seconds[i]);
            if (facing == Facing.Unknown || Annotation(trace, i, pixels, facing) is not { } annotation) continue;
            annotation["id"] = i + 1;
            annotation["image_id"] = i + 1;
            annotations.Add(annotation);
            images.Add(new JsonObject
            {
                ["id"] = i + 1,
                ["file_name"] = FormattableString.Invariant($"{clip.Name}-{trace.Frames[i]:000000}.png"),
                ["width"] = clip.WidthPx,
                ["height"] = clip.HeightPx,
                ["frame"] = trace.Frames[i],
                ["t_s"] = trace.Seconds[i],
            });
        }

        var count = annotations.Count;
        var file = new JsonObject
        {
            ["info"] = new JsonObject { ["description"] = "Smoothed body points of a rider, measured by GaitSeat, not marked by hand", ["version"] = Description.Version, ["clip_key"] = clip.ClipKey },
            ["licenses"] = new JsonArray(),
            ["categories"] = new JsonArray(new JsonObject
            {
                ["id"] = 1,
                ["name"] = "person",
                ["supercategory"] = "person",
                ["keypoints"] = PageJson.Array(Names),
                ["skeleton"] = PageJson.Array(Skeleton.Select(p => new JsonArray(p[0], p[1]))),
            }),
            ["images"] = images,
            ["annotations"] = annotations,
        };
        return (file.ToJsonString() + "\n", count);
    }

    private static JsonObject? Annotation(PointTrace trace, int row, double pixels, Facing facing)
    {
        var places = new (double X, double Y, double Score)[Names.Length];
        foreach (var point in Enum.GetValues<BodyPoint>())
        {
            double x = trace.XPx[row][(int)point] * pixels, y = trace.YPx[row][(int)point] * pixels;
            if (double.IsFinite(x) && double.IsFinite(y)) places[Array.IndexOf(Names, NameOf(point, facing))] = (x, y, Math.Max(1e-3, trace.Confidence[row][(int)point]));
        }

        var known = places.Where(p => p.Score > 0).ToList();
        if (known.Count == 0) return null;
        double left = known.Min(p => p.X), top = known.Min(p => p.Y), width = known.Max(p => p.X) - left, height = known.Max(p => p.Y) - top;
        return new()
        {
            ["category_id"] = 1,
            ["iscrowd"] = 0,
            // 2: labelled and visible; 0 with zeros: not labelled.
            ["keypoints"] = PageJson.Array(places.SelectMany(p => new JsonNode?[] { Round(p.X), Round(p.Y), p.Score > 0 ? 2 : 0 })),
            ["num_keypoints"] = known.Count,
            ["scores"] = PageJson.Array(places.Select(p => (JsonNode?)JsonValue.Create(Round(p.Score)))),
            ["bbox"] = new JsonArray(Round(left), Round(top), Round(width), Round(height)),
            ["area"] = Round(width * height),
        };
    }

    private static string NameOf(BodyPoint point, Facing facing)
    {
        var (near, far) = facing == Facing.Right ? ("right_", "left_") : ("left_", "right_");
        return point switch
        {
            BodyPoint.Nose => "nose",
            BodyPoint.FarShoulder => far + "shoulder",
            BodyPoint.FarHip => far + "hip",
            _ => near + point.ToTerm(),
        };
    }

    private static double Round(double value) => Math.Round(value, 3);
}
