using System.Diagnostics;
using System.Text.Json;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Store;
using GaitSeat.Studio;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>Clips that are whole but not what is hoped for, through the real pipeline: each is measured as far as it goes or set aside by name.</summary>
public sealed class OddClipTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-odd-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task ClipWithoutAnyRider_IsSetAside_WithTheReason()
    {
        NeedsWeights();
        await FfmpegAsync("-f", "lavfi", "-i", "testsrc2=s=640x360:r=25:d=2", "-pix_fmt", "yuv420p", Clip("bars.mp4"));

        var clip = await ProcessOneAsync(ExitCodes.NoneMeasured);

        Assert.Equal("set_aside", clip.GetProperty("status").GetString());
        Assert.Contains(clip.GetProperty("reason").GetString(), new[] { "no_rider", "no_horse" });
    }

    [Fact]
    public async Task ClipThatCutsBetweenCameras_HasNoStrideAcrossTheCut()
    {
        NeedsWeights();
        var renderer = new StudioRenderer(FfmpegTools.Locate());
        var script = new ClipScript { Seed = 21, Gait = Gait.RisingTrot, DurationSeconds = 3.5 };
        foreach (var (name, facing) in new[] { ("a", Facing.Right), ("b", Facing.Left) })
            await renderer.RenderAsync(script with { Facing = facing }, Directory.CreateDirectory(Path.Combine(_folder, "parts")).FullName, name, CancellationToken.None);
        await FfmpegAsync(
            "-i", Path.Combine(_folder, "parts", "a.mp4"), "-i", Path.Combine(_folder, "parts", "b.mp4"),
            "-filter_complex", "[0:v][1:v]concat=n=2:v=1[v]", "-map", "[v]", Clip("cut.mp4"));

        await ProcessOneAsync(ExitCodes.Done);

        using var query = new DatasetQuery(Path.Combine(_folder, "dataset"));
        var strides = query.Query("select start_s, end_s, facing from strides order by start_s");
        Assert.NotEmpty(strides);
        Assert.DoesNotContain(strides, s => Number(s["start_s"]) < 3.4 && Number(s["end_s"]) > 3.6);
        Assert.All(strides, s => Assert.Equal(Number(s["start_s"]) < 3.5 ? "right" : "left", s["facing"]));
    }

    private static double Number(object? value) => Convert.ToDouble(value, null);

    private string Clip(string name) => Path.Combine(Directory.CreateDirectory(Path.Combine(_folder, "clips")).FullName, name);

    private async Task<JsonElement> ProcessOneAsync(int expectedCode)
    {
        var (code, text, error) = await SeasonFolder.RunAsync(default, "process", Path.Combine(_folder, "clips"), "--dataset", Path.Combine(_folder, "dataset"), "--json");
        Assert.True(code == expectedCode, error);
        using var json = JsonDocument.Parse(text);
        return json.RootElement.GetProperty("clips")[0].Clone();
    }

    private static async Task FfmpegAsync(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(FfmpegTools.Locate().FfmpegPath, ["-nostdin", "-v", "error", "-y", .. arguments]))!;
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
    }

    private static void NeedsWeights()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
    }
}
