using System.Globalization;
using System.Text.Json;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>Reads ffprobe's JSON. (FFMpegCore's own probe call can neither prefix the file name nor show frames.)</summary>
internal static class StreamLookParser
{
    /// <returns>Null if the file has no video stream besides cover pictures.</returns>
    public static StreamLook? Parse(JsonElement root)
    {
        foreach (var stream in List(root, "streams"))
        {
            if (Text(stream, "codec_type") != "video" || Number(stream, "disposition", "attached_pic") == 1) continue;
            return Parse(root, stream);
        }

        return null;
    }

    private static StreamLook Parse(JsonElement root, JsonElement stream)
    {
        var index = (int)Number(stream, "index")!.Value;
        var frames = List(root, "frames").Where(f => Number(f, "stream_index") == index).ToArray();
        var times = frames.Select(f => Number(f, "best_effort_timestamp") ?? Number(f, "pts")).OfType<long>().ToArray();
        var (tickNumerator, tickDenominator) = Ratio(Text(stream, "time_base"), '/') ?? (1, 1000);
        var sides = List(stream, "side_data_list").Concat(frames.Take(1).SelectMany(f => List(f, "side_data_list"))).ToArray();
        var origin = times.Length > 0 ? times.Min() : Number(stream, "start_pts") ?? 0;
        return new(
            new(Text(root.GetProperty("format"), "format_name"), index, tickNumerator, tickDenominator, origin, Text(stream, "color_transfer"), ColourMatrix.Named(Text(stream, "color_space"))),
            Text(stream, "codec_name"),
            Text(stream, "codec_tag_string"),
            Text(stream, "pix_fmt"),
            (int)(Number(stream, "width") ?? 0),
            (int)(Number(stream, "height") ?? 0),
            Ratio(Text(stream, "sample_aspect_ratio"), ':') is (> 0 and var w, > 0 and var h) ? (double)w / h : 1,
            Rotation(sides),
            IsInterlaced(stream, frames),
            Text(stream, "codec_tag_string") is "encv" || sides.Any(s => Text(s, "side_data_type").Contains("Encryption", StringComparison.Ordinal)),
            frames.Length,
            Seconds(stream, "duration") ?? Seconds(root.GetProperty("format"), "duration"),
            Rate(stream));
    }

    private static bool IsInterlaced(JsonElement stream, JsonElement[] frames) =>
        Text(stream, "field_order") is "tt" or "bb" or "tb" or "bt" || frames.Any(f => Number(f, "interlaced_frame") == 1);

    /// <summary>
    /// ffprobe counts the display matrix's turn counter-clockwise. Angles within 1 deg of a quarter turn are taken as one, as FFmpeg's own
    /// rotation does; at others it turns the picture within its frame, so the size stays and 0 is given.
    /// </summary>
    private static int Rotation(JsonElement[] sides)
    {
        foreach (var side in sides)
        {
            if (Number(side, "rotation") is not { } counterClockwise) continue;
            var clockwise = (double)(((-counterClockwise % 360) + 360) % 360);
            var quarter = Math.Round(clockwise / 90) * 90;
            return Math.Abs(clockwise - quarter) < 1 ? (int)quarter % 360 : 0;
        }

        return 0;
    }

    private static double? Rate(JsonElement stream) => (Ratio(Text(stream, "avg_frame_rate"), '/'), Ratio(Text(stream, "r_frame_rate"), '/')) switch
    {
        ((> 0 and var n, > 0 and var d), _) => (double)n / d,
        (_, (> 0 and var n, > 0 and var d)) => (double)n / d,
        _ => null,
    };

    private static double? Seconds(JsonElement element, string name) =>
        double.TryParse(Text(element, name), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value > 0 ? value : null;

    private static (long Numerator, long Denominator)? Ratio(string text, char separator)
    {
        var parts = text.Split(separator);
        return parts.Length == 2 && long.TryParse(parts[0], CultureInfo.InvariantCulture, out var n) && long.TryParse(parts[1], CultureInfo.InvariantCulture, out var d)
            ? (n, d)
            : null;
    }

    private static JsonElement.ArrayEnumerator List(JsonElement element, string name) =>
        element.TryGetProperty(name, out var list) && list.ValueKind == JsonValueKind.Array ? list.EnumerateArray() : default;

    private static string Text(JsonElement element, string name) =>
        element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";

    private static long? Number(JsonElement element, params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (!element.TryGetProperty(name, out element)) return null;
        }

        return element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var value) ? (long)Math.Round(value) : null;
    }
}
