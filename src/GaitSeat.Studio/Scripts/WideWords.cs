using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The conditions of a clip of the wide set as its truth file tells them.</summary>
internal static class WideWords
{
    /// <param name="riderPx">Mean height of the rider over the clip, px.</param>
    /// <param name="mostYawDeg">Greatest turn in the clip, deg, also where the rider is not in the picture.</param>
    public static IReadOnlyDictionary<string, string> Of(WideRow row, ClipScript script, double riderPx, double mostYawDeg) =>
        new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["set"] = row.Core ? "core" : "wide",
            ["path"] = PathOf(script),
            ["yaw"] = mostYawDeg switch { <= 15 => "side-on", <= 25 => "to-25", <= 45 => "to-45", _ => "all-round" },
            ["camera"] = row.Camera,
            ["roll"] = row.Roll,
            ["size"] = riderPx switch { < 200 => "small", < 300 => "usual", _ => "large" },
            ["rate"] = row.Rate,
            ["picture"] = FormattableString.Invariant($"{script.WidthPx}x{script.HeightPx}"),
            ["light"] = row.Light,
            ["blur"] = row.Blur,
            ["bit-rate"] = row.BitRate,
            ["clothes"] = row.Clothes,
            ["horse"] = row.Horse,
            ["occluder"] = row.Occluder,
            ["stirrup"] = row.Stirrup,
            ["gait"] = row.Gait,
            ["fault"] = row.Fault,
            ["facing"] = row.Facing == Facing.Right ? "right" : "left",
        };

    private static string PathOf(ClipScript script) => script.Way switch
    {
        Way.Line => "line",
        Way.CircleFromInside => "circle-inside",
        Way.CircleFromOutside => "circle-outside",
        _ => "constant-yaw",
    };
}
