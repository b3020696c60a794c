using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Tests.Models;

public sealed class HeatmapDecoderTests
{
    [Fact]
    public void Decode_PeakInside_MovesAQuarterTowardsTheHigherNeighbour()
    {
        // 4 rows of 5; peak at row 1, column 2; right neighbour higher than left, upper higher than lower.
        float[] map =
        [
            0, 0, 0.4f, 0, 0,
            0, 0.1f, 0.9f, 0.3f, 0,
            0, 0, 0.2f, 0, 0,
            0, 0, 0, 0, 0,
        ];
        var point = new HeatmapPoint[1];

        HeatmapDecoder.Decode(map, rows: 4, columns: 5, point);

        Assert.Equal((2 + 0.5 + 0.25) / 5, point[0].X, 1e-12);
        Assert.Equal((1 + 0.5 - 0.25) / 4, point[0].Y, 1e-12);
        Assert.Equal(0.9, point[0].Score, 1e-6);
    }

    [Fact]
    public void Decode_PeakAtTheEdgeOrFlat_StaysInTheCell()
    {
        float[] maps = [1, 0, 0, 0, 0, 0, 0, 0, 0, 5, 5, 5, 5, 5, 5, 5, 5, 5];
        var points = new HeatmapPoint[2];

        HeatmapDecoder.Decode(maps, rows: 3, columns: 3, points);

        Assert.Equal(new HeatmapPoint(0.5 / 3, 0.5 / 3, 1), points[0]);
        Assert.Equal(new HeatmapPoint(0.5 / 3, 0.5 / 3, 5), points[1]);
    }

    [Fact]
    public void Decode_NothingFinite_IsMissing()
    {
        var point = new HeatmapPoint[1];

        HeatmapDecoder.Decode([float.NaN, float.NaN], rows: 1, columns: 2, point);

        Assert.True(double.IsNaN(point[0].X) && double.IsNaN(point[0].Y) && double.IsNaN(point[0].Score));
    }

    [Fact]
    public void Decode_GaussianAnywhere_IsWithinAQuarterOfACell()
    {
        // Law: the place read is at most a quarter of a cell from the middle of a symmetric bump (fixed seed).
        CsCheck.Check.Sample(
            CsCheck.Gen.Select(CsCheck.Gen.Double[2, 14], CsCheck.Gen.Double[2, 10]),
            centre =>
            {
                var map = new float[12 * 16];
                for (var i = 0; i < map.Length; i++)
                {
                    double dx = i % 16 + 0.5 - centre.Item1, dy = i / 16 + 0.5 - centre.Item2;
                    map[i] = (float)Math.Exp(-(dx * dx + dy * dy) / 4);
                }

                var point = new HeatmapPoint[1];
                HeatmapDecoder.Decode(map, rows: 12, columns: 16, point);
                Assert.InRange(point[0].X * 16 - centre.Item1, -0.2501, 0.2501);
                Assert.InRange(point[0].Y * 12 - centre.Item2, -0.2501, 0.2501);
            },
            seed: "0N0XIzNsQ0O2",
            iter: 500,
            threads: 1);
    }

    [Fact]
    public void Decode_WrongLength_SaysFoundAndExpected()
    {
        var e = Assert.Throws<ArgumentException>(() => HeatmapDecoder.Decode(new float[11], rows: 2, columns: 3, new HeatmapPoint[2]));

        Assert.Contains("found 11", e.Message, StringComparison.Ordinal);
    }
}
