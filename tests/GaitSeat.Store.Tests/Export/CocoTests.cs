using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Store.Tests.Export;

/// <summary>Held against the page "Data format" of cocodataset.org: fields that must be there, ids that must meet, key points as x, y, v.</summary>
public sealed class CocoTests(RiddenSeason season) : IClassFixture<RiddenSeason>
{
    /// <summary>COCO's own 17 key points in COCO's order.</summary>
    private static readonly string[] Coco17 =
    [
        "nose", "left_eye", "right_eye", "left_ear", "right_ear", "left_shoulder", "right_shoulder", "left_elbow", "right_elbow", "left_wrist", "right_wrist",
        "left_hip", "right_hip", "left_knee", "right_knee", "left_ankle", "right_ankle",
    ];

    private JsonElement File => field.ValueKind == JsonValueKind.Undefined ? field = Make() : field;

    private List<string> Names => [.. File.GetProperty("categories")[0].GetProperty("keypoints").EnumerateArray().Select(k => k.GetString()!)];

    [Fact]
    public void KeyPoints_BeginWithCocosOwn()
    {
        Assert.Equal(Coco17, Names.Take(17));
        Assert.Equal(["left_heel", "right_heel", "left_toe", "right_toe"], Names.Skip(17));
        Assert.All(File.GetProperty("categories")[0].GetProperty("skeleton").EnumerateArray().SelectMany(p => p.EnumerateArray()), n => Assert.InRange(n.GetInt32(), 1, Names.Count));
    }

    [Fact]
    public void EveryAnnotation_HasItsImageAndItsFields()
    {
        var images = File.GetProperty("images").EnumerateArray().ToDictionary(i => i.GetProperty("id").GetInt32());
        var annotations = File.GetProperty("annotations").EnumerateArray().ToList();
        // Both spells; frame 30 lies on the beginning of the second.
        Assert.Equal(RiddenSeason.Frames, annotations.Count);
        Assert.Equal(annotations.Count, annotations.Select(a => a.GetProperty("id").GetInt32()).Distinct().Count());
        foreach (var a in annotations)
        {
            Assert.Equal(2560, images[a.GetProperty("image_id").GetInt32()].GetProperty("width").GetInt32());
            Assert.Equal(1, a.GetProperty("category_id").GetInt32());
            Assert.Equal(0, a.GetProperty("iscrowd").GetInt32());
            var keypoints = a.GetProperty("keypoints").EnumerateArray().Select(k => k.GetDouble()).Chunk(3).ToList();
            Assert.Equal(Names.Count, keypoints.Count);
            Assert.Equal(keypoints.Count(k => k[2] > 0), a.GetProperty("num_keypoints").GetInt32());
            Assert.All(keypoints.Where(k => k[2] == 0), k => Assert.Equal([0, 0, 0], k));
            var box = a.GetProperty("bbox").EnumerateArray().Select(v => v.GetDouble()).ToArray();
            Assert.Equal(box[2] * box[3], a.GetProperty("area").GetDouble(), 0.01);
            Assert.All(keypoints.Where(k => k[2] > 0), k => Assert.True(k[0] >= box[0] - 1e-6 && k[0] <= box[0] + box[2] + 2e-3 && k[1] >= box[1] - 1e-6 && k[1] <= box[1] + box[3] + 2e-3));
        }
    }

    /// <summary>The analysed picture was half as large as the clip's 2560 px.</summary>
    [Fact]
    public void Places_AreInPixelsOfTheClipAndOnTheRidersSide()
    {
        Assert.Equal(Twice(BodyPoint.Knee, 5), At(5, "right_knee"));
        Assert.Equal(Twice(BodyPoint.FarShoulder, 5), At(5, "left_shoulder"));
        Assert.Equal(Twice(BodyPoint.Toe, 5), At(5, "right_toe"));
        Assert.Equal([0, 0, 0], At(5, "left_knee"));
        Assert.Equal([0, 0, 0], At(5, "right_eye"));
        Assert.Equal([0, 0, 0], At(11, "right_elbow"));
        Assert.Equal(Twice(BodyPoint.Knee, 40), At(40, "left_knee"));
        Assert.Equal(Twice(BodyPoint.FarHip, 40), At(40, "right_hip"));
    }

    private static double[] Twice(BodyPoint point, int frame) => RiddenSeason.Place(point, frame) is var (x, y) ? [2 * x, 2 * y, 2] : [];

    private double[] At(int frame, string name)
    {
        var image = File.GetProperty("images").EnumerateArray().Single(i => i.GetProperty("frame").GetInt32() == frame).GetProperty("id").GetInt32();
        var annotation = File.GetProperty("annotations").EnumerateArray().Single(a => a.GetProperty("image_id").GetInt32() == image);
        return annotation.GetProperty("keypoints").EnumerateArray().Select(k => k.GetDouble()).Chunk(3).ElementAt(Names.IndexOf(name));
    }

    private JsonElement Make()
    {
        using var export = DatasetExport.Open(season.Dataset, null, null);
        var file = export.Coco(season.Out("coco"), 1280).Files.Single(f => Path.GetFileName(f).StartsWith(RiddenSeason.Agreed[..16], StringComparison.Ordinal));
        using var json = JsonDocument.Parse(System.IO.File.ReadAllText(file));
        return json.RootElement.Clone();
    }
}
