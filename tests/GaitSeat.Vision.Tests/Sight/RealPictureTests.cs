using System.Diagnostics;
using GaitSeat.Model;
using GaitSeat.Vision.Models;
using GaitSeat.Vision.Sight;
using GaitSeat.Vision.Tests.Models;

namespace GaitSeat.Vision.Tests.Sight;

/// <summary>The whole way from a picture to near-side points, on public stills kept outside the repository; skips where they or the weights are absent.</summary>
public sealed class RealPictureTests
{
    // Facing as a person sees it.
    [Theory]
    [InlineData("rider-043.jpg", Facing.Right)]
    [InlineData("rider-164.jpg", Facing.Right)]
    [InlineData("rider-115.jpg", Facing.Left)]
    [InlineData("rider-238.jpg", Facing.Left)]
    public async Task SideOnStill_RiderOnHorseFoundAndLegHangsBelowTheSeat(string file, Facing facing)
    {
        var still = Path.Combine(Shared(), "footage", "stills", file);
        Assert.SkipUnless(File.Exists(still), $"no {still}");
        using var frame = await Decoded(still);
        using var detector = new ObjectDetector(Weights.Require(ModelCatalogue.NanoDet), new DetectorSettings());
        using var reader = new BodyPointReader(Weights.Require(ModelCatalogue.MoveNetThunder), Weights.Require(ModelCatalogue.BlazePoseHeavy), new(), 1);
        var path = RiderChoice.Choose([new Look(0, detector.Detect(0, frame))], frame.WidthPx, frame.HeightPx, new());
        var box = Assert.NotNull(path.RiderAt(0));
        Assert.NotNull(path.HorseAt(0));

        var s = new PointFusion(new()).Fuse([0], [reader.Read(0, frame, box, 0)], path, Still(), Still(), new bool[1], frame.WidthPx, frame.HeightPx);

        Assert.Equal(facing, s.Facing[0]);
        var forward = facing == Facing.Right ? 1 : -1;
        PointPx shoulder = s[BodyPoint.Shoulder][0], hip = s[BodyPoint.Hip][0], knee = s[BodyPoint.Knee][0], ankle = s[BodyPoint.Ankle][0];
        Assert.True(shoulder.Y < hip.Y && hip.Y < knee.Y && knee.Y < ankle.Y, $"{shoulder} {hip} {knee} {ankle}");
        Assert.True(forward * (knee.X - hip.X) > 0, "the knee is ahead of the hip");
        Assert.True(forward * (s[BodyPoint.Toe].XPx[0] - s[BodyPoint.Heel].XPx[0]) > 0, "the toe is ahead of the heel");
        Assert.All([shoulder, hip, knee, ankle], p => Assert.True(box.Scaled(1.15).Contains(p), $"{p} in {box}"));
    }

    private static PatchMotion Still() => new([0], [0], [0], [1], [0], [0]);

    private static string Shared()
    {
        var folder = Environment.GetEnvironmentVariable("GAITSEAT_SHARED") ?? Path.Combine(Weights.TopFolder, "..", "shared");
        Assert.SkipUnless(Directory.Exists(folder), $"no pictures to try: {folder} (set GAITSEAT_SHARED)");
        return folder;
    }

    private static async Task<Frame> Decoded(string still)
    {
        var size = (await Run("ffprobe", ["-v", "error", "-select_streams", "v:0", "-show_entries", "stream=width,height", "-of", "csv=p=0", still])).ToArray();
        var parts = System.Text.Encoding.ASCII.GetString(size).Trim().Split(',');
        var frame = new Frame(0, 0, int.Parse(parts[0]), int.Parse(parts[1]));
        (await Run("ffmpeg", ["-v", "error", "-i", still, "-frames:v", "1", "-f", "rawvideo", "-pix_fmt", "rgb24", "-"])).CopyTo(frame.Memory);
        return frame;
    }

    private static async Task<ReadOnlyMemory<byte>> Run(string program, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        using var bytes = new MemoryStream();
        await process.StandardOutput.BaseStream.CopyToAsync(bytes);
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return bytes.ToArray();
    }
}
