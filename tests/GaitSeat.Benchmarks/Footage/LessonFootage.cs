using System.Diagnostics;
using System.Globalization;
using GaitSeat.Footage;
using GaitSeat.Studio;

namespace GaitSeat.Benchmarks;

/// <summary>
/// Long footage from little: two short pieces are drawn by the studio once, 15 s of rising trot with the camera on the rider and 11.25 s of an arena nobody rides in, and strung together without
/// encoding them again. Pieces and clips are kept in the folder and taken from there the next time.
/// </summary>
internal sealed class LessonFootage(FfmpegTools ffmpeg, string folder)
{
    /// <summary>Length of the piece with the rider, s.</summary>
    public const double TrotSeconds = 15;

    /// <summary>Length of the piece without, s.</summary>
    public const double EmptySeconds = 11.25;

    private const double RateHz = 30;

    /// <summary>A clip in a folder of its own, as <c>gaitseat process</c> wants it.</summary>
    /// <param name="name">Of folder and clip.</param>
    /// <param name="heightPx">1080 or another height of 16:9.</param>
    /// <param name="emptyAfterEach">How often the empty piece follows each trot piece: 4 makes a lesson (trot a quarter of the time), 0 trot throughout.</param>
    /// <param name="seconds">At least so long; whole rounds of trot and empty pieces.</param>
    /// <returns>The folder.</returns>
    public async Task<string> ClipAsync(string name, int heightPx, int emptyAfterEach, double seconds, CancellationToken ct)
    {
        var clips = Path.Combine(folder, name);
        var clip = Path.Combine(clips, name + ".mp4");
        if (File.Exists(clip)) return clips;
        var trot = await TrotAsync(heightPx, ct);
        string[] round = [trot, .. emptyAfterEach > 0 ? Enumerable.Repeat(await EmptyAsync(heightPx, ct), emptyAfterEach) : []];
        var rounds = (int)Math.Ceiling(seconds / (TrotSeconds + (emptyAfterEach * EmptySeconds)));
        Directory.CreateDirectory(clips);
        var list = Path.Combine(folder, name + ".txt");
        await File.WriteAllLinesAsync(list, Enumerable.Repeat(round, rounds).SelectMany(r => r).Select(p => $"file '{p}'"), ct);
        await FfmpegAsync(clip, ct, "-f", "concat", "-safe", "0", "-i", list, "-c", "copy");
        return clips;
    }

    /// <summary>The piece with the rider.</summary>
    /// <returns>Its path.</returns>
    public Task<string> TrotAsync(int heightPx, CancellationToken ct) => DrawnAsync($"trot-{heightPx}p", heightPx, CameraWork.Pan, TrotSeconds, null, ct);

    /// <summary>A camera that stands still sees the horse only about the middle of the drawn clip: the part before is the empty arena.</summary>
    private Task<string> EmptyAsync(int heightPx, CancellationToken ct) => DrawnAsync($"empty-{heightPx}p", heightPx, CameraWork.Static, 2 * (EmptySeconds + 3), EmptySeconds, ct);

    private async Task<string> DrawnAsync(string name, int heightPx, CameraWork camera, double seconds, double? keepSeconds, CancellationToken ct)
    {
        var path = Path.GetFullPath(Path.Combine(folder, name + ".mp4"));
        if (File.Exists(path)) return path;
        var script = new ClipScript
        {
            Seed = 4, Camera = camera, DurationSeconds = seconds, FrameRateHz = RateHz, HeightPx = heightPx, WidthPx = heightPx * 16 / 9, RiderHeightPx = Math.Round(heightPx * 0.375),
        };
        var drawn = await new StudioRenderer(ffmpeg).RenderAsync(script, Path.Combine(folder, "drawn"), name, ct);
        // Made with one closed group of frames a second, so that pieces can follow each other.
        string[] length = keepSeconds is { } keep ? ["-t", keep.ToString(CultureInfo.InvariantCulture)] : [];
        await FfmpegAsync(path, ct, ["-i", drawn.ClipPath, .. length, "-c:v", "libx264", "-preset", "veryfast", "-crf", "20", "-g", "30", "-flags", "+cgop", "-video_track_timescale", "90000"]);
        return path;
    }

    private async Task FfmpegAsync(string target, CancellationToken ct, params string[] words)
    {
        var unfinished = Path.Combine(folder, "unfinished.mp4");
        using var process = Process.Start(ffmpeg.FfmpegPath, ["-nostdin", "-v", "error", "-y", .. words, unfinished]);
        await process.WaitForExitAsync(ct);
        if (process.ExitCode != 0) throw new InvalidOperationException($"ffmpeg could not make {target}: exit code {process.ExitCode}");
        File.Move(unfinished, target);
    }
}
