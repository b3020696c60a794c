namespace GaitSeat.Footage.Tests;

/// <summary>The recipes. All small: <see cref="Barcode"/> pictures unless the test needs others.</summary>
internal static class Clips
{
    public const string X264 = "-c:v libx264 -preset ultrafast -bf 2 -qp 10 -pix_fmt yuv420p";

    /// <summary>Constant 30 Hz, 30 frames, re-ordered frames, index behind the pictures.</summary>
    public static Task<string> PlainAsync(this MadeClips clips) =>
        clips.ByFfmpegAsync("plain.mp4", $"{Barcode.Source(30, 30)} {X264}");

    public const int VariableFrames = 90;
    public const int VariableTicksPerSecond = 90_000;

    /// <summary>Ticks of frame n: 20 Hz on average, steps from 1,510 to 7,490 ticks with no period below 3,000 frames.</summary>
    public static long VariableTicks(int n) => 4_500L * n + (long)n * n * 1_237 % 3_000;

    /// <summary>Variable frame rate with times as <see cref="VariableTicks"/>, a key frame every 12 frames.</summary>
    public static Task<string> VariableAsync(this MadeClips clips, string name = "variable.mp4", string more = "") =>
        clips.ByFfmpegAsync(name, $"{Barcode.Source(20, VariableFrames)},settb=1/{VariableTicksPerSecond},setpts='4500*N+mod(N*N*1237,3000)' "
            + $"{X264} -g 12 -fps_mode passthrough -enc_time_base 1:{VariableTicksPerSecond} -video_track_timescale {VariableTicksPerSecond} {more}");

    /// <summary>White in the upper left quarter, 64 x 48, turned by the display matrix.</summary>
    public static Task<string> TurnedAsync(this MadeClips clips, int clockwiseDegrees) =>
        clips.OnceAsync($"turned{clockwiseDegrees}.mp4", async path =>
        {
            var straight = await clips.ByFfmpegAsync("quarter.mp4",
                $"-f lavfi -i color=black:s=64x48:r=30:d=0.2,drawbox=x=0:y=0:w=32:h=24:color=white:t=fill {X264}");
            var file = await File.ReadAllBytesAsync(straight);
            Mp4Surgery.Turn(file, clockwiseDegrees);
            await File.WriteAllBytesAsync(path, file);
        });

    /// <summary>25 interlaced frames, upper field first, of a white bar that moves 4 px a field to the right.</summary>
    public static Task<string> InterlacedAsync(this MadeClips clips) =>
        clips.ByFfmpegAsync("interlaced.mp4",
            "-f lavfi -i color=black:s=320x64:r=50:d=1,format=yuv420p,geq=lum='16+219*between(X-4*N,0,39)':cb=128:cr=128,interlace=scan=tff:lowpass=off "
            + "-c:v libx264 -preset ultrafast -qp 10 -flags +ildct+ilme -x264-params tff=1");

    /// <summary>Another file with a change in its bytes.</summary>
    public static Task<string> ChangedAsync(this MadeClips clips, string name, Func<Task<string>> original, Func<byte[], byte[]> change) =>
        clips.OnceAsync(name, async path => await File.WriteAllBytesAsync(path, change(await File.ReadAllBytesAsync(await original()))));
}
