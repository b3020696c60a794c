using System.Runtime.InteropServices;
using System.Text.Json.Nodes;

namespace GaitSeat.Vision.Tests.Import;

public sealed class WeightTests
{
    [Fact]
    public void Weight_UInt8_IsScaledFromItsMinimum()
    {
        // 0, 1, 255 times 0.5 minus 3.
        Assert.Equal([-3, -2.5f, 124.5f], Read([0, 1, 255], "uint8", 0.5, -3));
    }

    [Fact]
    public void Weight_UInt16_IsScaledFromItsMinimum()
    {
        Assert.Equal([1, 3, 131071], Read(MemoryMarshal.AsBytes<ushort>([0, 1, 65535]), "uint16", 2, 1));
    }

    [Fact]
    public void Weight_Float16_IsExact()
    {
        // Bit patterns by hand: 0x3C00 = 1, 0xC100 = -2.5, 0x2E66 = 0.0999755859375 (1638 / 2^14).
        Assert.Equal([1, -2.5f, 0.0999755859375f], Read(MemoryMarshal.AsBytes<ushort>([0x3C00, 0xC100, 0x2E66]), "float16", null, null));
    }

    [Fact]
    public void Weight_SecondInTheFile_StartsWhereTheFirstEnds()
    {
        using var graph = new TinyGraph()
            .Weight("first", "float32", [3], [1, 2, 3], Quantisation("uint8", 1, 0))
            .Floats("second", [7.5f, -1, 4], 3)
            .Node("y", "AddV2", ["x", "second"]);

        Assert.Equal([7.5f, -1, 4], graph.Run("y", [0, 0, 0], [3]).Values);
    }

    private static float[] Read(ReadOnlySpan<byte> bytes, string type, double? scale, double? min)
    {
        using var graph = new TinyGraph()
            .Weight("k", "float32", [3], bytes, Quantisation(type, scale, min))
            .Node("y", "AddV2", ["x", "k"]);
        return graph.Run("y", [0, 0, 0], [3]).Values;
    }

    private static JsonObject Quantisation(string type, double? scale, double? min)
    {
        var q = new JsonObject { ["dtype"] = type };
        if (scale is not null) q["scale"] = scale;
        if (min is not null) q["min"] = min;
        return q;
    }
}
