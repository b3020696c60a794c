using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>The filters between decoder and frames. FFmpeg's own display rotation runs before them.</summary>
internal static class FilterChain
{
    public static string Build(ClipInfo clip, ReadSettings settings, FrameColours colours, int widthPx, int heightPx)
    {
        var filters = new List<string> { Trim(clip.Stream, settings), $"setpts=PTS-({clip.Stream.OriginTicks})" };

        // One frame out for one in: the rate of strides does not need fields, and doubled frames would not be pictures that were taken together.
        if (clip.Interlaced) filters.Add("bwdif=mode=send_frame:parity=auto:deint=all");

        // NUT takes rising times only. A clip that steps back in time (joined recordings) loses the frames that step back.
        filters.Add($"select='isnan(prev_selected_pts)+gt(pts,prev_selected_pts){Thinned(clip, settings)}'");
        // Without accurate_rnd and full_chroma_int, which turn off the fast paths: 2.5 instead of 7.1 ms of one core a 720p frame, for the last bit of a colour.
        filters.Add($"scale={widthPx}:{heightPx}:flags=bicubic{(colours == FrameColours.Planes ? ":out_range=limited" : "")}");
        filters.Add("setsar=1");
        filters.Add(colours == FrameColours.Planes ? "format=yuv420p" : "format=rgb24");
        return string.Join(',', filters);
    }

    private static string Trim(StreamInfo stream, ReadSettings settings)
    {
        var start = stream.OriginTicks + Ticks(stream, settings.StartSeconds ?? 0);
        var trim = $"trim=start_pts={start}";
        return settings.EndSeconds is { } end ? $"{trim}:end_pts={stream.OriginTicks + Ticks(stream, end)}" : trim;
    }

    /// <summary>The first tick not before a time. A millionth of a tick of slack, for a time that was written down from a tick.</summary>
    private static long Ticks(StreamInfo stream, double seconds) =>
        (long)Math.Ceiling(seconds * stream.TickDenominator / stream.TickNumerator - 1e-6);

    /// <summary>Asked by time (n - 1/2 mean steps after the last), so that slow parts of a mixed clip stay whole.</summary>
    private static string Thinned(ClipInfo clip, ReadSettings settings)
    {
        var every = Thinning.Every(clip, settings);
        return every <= 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"*gte(t-prev_selected_t,{(every - 0.5) / clip.AverageFrameRateHz:R})");
    }
}
