using GaitSeat.Vision.Tests.Import;

namespace GaitSeat.Vision.Tests.Models;

/// <summary>A made-up body-point model of one convolution.</summary>
internal static class HeatmapModel
{
    /// <summary>Picture to maps of half its size: each point's map is red minus green over blocks of 2 x 2 for even points, green minus red for odd ones.</summary>
    public static string Write(string folder, int widthPx, int heightPx, int points = 17, int inputChannels = 3)
    {
        var kernel = new float[2 * 2 * inputChannels * points];
        for (var i = 0; i < kernel.Length; i++)
        {
            var channel = i / points % inputChannels;
            var sign = i % points % 2 == 0 ? 1f : -1f;
            kernel[i] = channel switch { 0 => sign, 1 => -sign, _ => 0f };
        }

        using var graph = new TinyGraph()
            .Floats("k", kernel, 2, 2, inputChannels, points)
            .Ints("perm", [0, 3, 1, 2], 4)
            .Node("maps", "Conv2D", ["x", "k"], ("strides", new[] { 1, 2, 2, 1 }), ("padding", "VALID"))
            .Node("planar", "Transpose", ["maps", "perm"])
            .Write();
        var path = Path.Combine(folder, $"maps{points}.onnx");
        File.WriteAllBytes(path, graph.Import("planar", heightPx, widthPx, inputChannels));
        return path;
    }
}
