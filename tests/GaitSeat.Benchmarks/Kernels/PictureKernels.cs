using BenchmarkDotNet.Attributes;
using GaitSeat.Model;
using GaitSeat.Vision.Flow;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Benchmarks;

/// <summary>What is done to the pixels of a frame of 1280 x 720 in planes: optical flow to the next frame, the square around the rider, the whole picture for the detector.</summary>
[MemoryDiagnoser]
public class PictureKernels
{
    private const int WidthPx = 1280, HeightPx = 720;

    private static readonly InputFormat _format = new(false, false, [1, 1, 1], [0, 0, 0], 0);
    private static readonly BoxPx _rider = new(560, 200, 130, 270), _horse = new(420, 330, 430, 330);

    private readonly float[] _crop = new float[3 * 256 * 256], _letterbox = new float[3 * 416 * 416];
    private readonly PatchFlow _flow = new(new());
    private Frame[] _frames = [];
    private int _next;

    /// <summary>Texture that moves by three pixels a frame, there and back.</summary>
    [GlobalSetup]
    public void Draw()
    {
        var texture = new byte[(WidthPx + 8) * HeightPx];
        new Random(4).NextBytes(texture);
        for (var i = 2; i < texture.Length; i++) texture[i] = (byte)((texture[i] + texture[i - 1] + texture[i - 2]) / 3);
        _frames = [.. Enumerable.Range(0, 2).Select(f => Shifted(texture, 3 * f, f))];
        foreach (var frame in _frames) _flow.Next(frame, Hints);
    }

    [GlobalCleanup]
    public void Release()
    {
        foreach (var frame in _frames) frame.Dispose();
    }

    [Benchmark(Description = "optical flow, a frame")]
    public object Flow() => _flow.Next(_frames[_next++ % 2], Hints);

    [Benchmark(Description = "crop around the rider, 256 x 256")]
    public void Crop() => CropSampler.Fill(_frames[0], new(625, 335, 360, 0, 256), _format, _crop);

    [Benchmark(Description = "whole picture for the detector, 416 x 416")]
    public void Letterbox() => CropSampler.Fill(_frames[0], CropTransform.Letterbox(WidthPx, HeightPx, 416), _format, _letterbox);

    private static FlowHints Hints => new(_rider, _horse, null);

    private static Frame Shifted(byte[] texture, int shiftPx, int index)
    {
        var frame = new Frame(index, index / 30.0, WidthPx, HeightPx, ColourMatrix.Bt709);
        for (var y = 0; y < HeightPx; y++) texture.AsSpan((y * (WidthPx + 8)) + shiftPx, WidthPx).CopyTo(frame.Brightness[(y * WidthPx)..]);
        frame.BlueDifference.Fill(128);
        frame.RedDifference.Fill(128);
        return frame;
    }
}
