using GaitSeat.Footage;

namespace GaitSeat.Studio;

/// <summary>Makes clips: draws a ride frame by frame, encodes it, and writes the truth beside it. The same script gives the same frames.</summary>
public sealed class StudioRenderer(FfmpegTools tools)
{
    /// <summary>Goes up when the same script would give other pictures or another truth.</summary>
    public const int DrawingVersion = 3;

    /// <summary>Made footage is encoded like a good phone's, not without loss: the measures must hold on such pictures.</summary>
    private static EncodeSettings Encoding(ClipScript script) => new() { Crf = script.Crf, Preset = script.Preset };

    /// <summary>Makes <c>NAME.mp4</c>, <c>NAME.truth.json</c> and <c>NAME.truth.csv</c> in a folder.</summary>
    /// <exception cref="ArgumentException">The script cannot be ridden or drawn; the message says which value and what is allowed.</exception>
    public Task<StudioClip> RenderAsync(ClipScript script, string folder, string name, CancellationToken ct) =>
        RenderAsync(script, folder, folder, name, ct);

    /// <summary>The same with the truth in a folder of its own.</summary>
    public async Task<StudioClip> RenderAsync(ClipScript script, string folder, string truthFolder, string name, CancellationToken ct)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentException.ThrowIfNullOrEmpty(name);
        var ride = new Ride(script);
        var stage = new Stage(ride);
        var camera = new StudioCamera(ride, stage);
        Directory.CreateDirectory(folder);
        Directory.CreateDirectory(truthFolder);
        var clipPath = Path.Combine(folder, name + ".mp4");
        await EncodeAsync(new FrameMaker(ride, stage, camera), script, clipPath, ct);
        var truth = new TruthMaker(ride, stage, camera).Make(name);
        var truthPath = TruthFile.PathFor(truthFolder, name);
        TruthFile.Write(truthPath, truth);
        return new(clipPath, truthPath, truth);
    }

    // While one batch of frames is encoded the next is drawn, one frame a core.
    private async Task EncodeAsync(FrameMaker maker, ClipScript script, string path, CancellationToken ct)
    {
        await using var encoder = new ClipEncoder(tools, path, script.WidthPx, script.HeightPx, script.FrameRateHz, Encoding(script));
        var times = FrameTimes.Of(script);
        Shutter[] shutters = [.. Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Shutter())];
        var (drawing, drawn) = (new FrameBatch(maker, shutters), new FrameBatch(maker, shutters));
        await drawing.DrawAsync(0, times.Length, ct);
        while (drawing.Count > 0)
        {
            (drawing, drawn) = (drawn, drawing);
            var next = drawing.DrawAsync(drawn.First + drawn.Count, times.Length, ct);
            for (var i = 0; i < drawn.Count; i++) await encoder.WriteAsync(drawn.Frame(i), times[drawn.First + i], ct);
            await next;
        }

        await encoder.FinishAsync(ct);
    }
}
