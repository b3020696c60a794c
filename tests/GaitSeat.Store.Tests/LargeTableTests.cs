using CsCheck;
using GaitSeat.Model;
using Parquet;

namespace GaitSeat.Store.Tests;

/// <summary>Bytes must not depend on chance where a table is long enough for the writer to sample it.</summary>
public sealed class LargeTableTests
{
    private const int Rows = 20_000;

    [Fact]
    public async Task LongTable_WrittenTwice_GivesTheSameBytesAndReadsBack()
    {
        var motion = Made.Motion();
        var strides = Enumerable.Range(1, Rows).Select(i => Made.Stride(i, 60 + i % 977 * 0.01, i % 7 == 0 ? double.NaN : 45 + i % 1013 * 0.01)).ToArray();
        var record = Made.Measured() with { Motion = motion with { Strides = strides } };
        using var first = new MemoryStream();
        using var second = new MemoryStream();
        await StridesTable.Table.WriteAsync(record, first, CancellationToken.None);
        Assert.Equal(Rows, await StridesTable.Table.WriteAsync(record, second, CancellationToken.None));
        Assert.True(first.GetBuffer().AsSpan(0, (int)first.Length).SequenceEqual(second.GetBuffer().AsSpan(0, (int)second.Length)));

        await using var reader = await ParquetReader.CreateAsync(second, leaveStreamOpen: true, cancellationToken: CancellationToken.None);
        using var group = reader.OpenRowGroupReader(0);
        var thigh = new double?[Rows];
        await group.ReadAsync<double>(reader.Schema.FindDataField("thigh_angle_sit_deg"), thigh.AsMemory());
        Assert.Equal(strides.Select(s => Finite(s.Measures[StrideMeasure.ThighAngleSit].Value)), thigh);
    }

    /// <summary>Any finite number comes back bit for bit; anything else comes back as null.</summary>
    [Fact]
    public void Numbers_ReadBackExactly() => Gen.Double.Array[1, 50].Sample(
        values =>
        {
            var strides = values.Select((v, i) => Made.Stride(i + 1, 70, v)).ToArray();
            using var stream = new MemoryStream();
            StridesTable.Table.WriteAsync(Made.Measured() with { Motion = Made.Motion() with { Strides = strides } }, stream, CancellationToken.None).GetAwaiter().GetResult();
            Assert.Equal(values.Select(Finite), Thighs(stream, values.Length));
        },
        seed: "0000KH3TwKS3",
        iter: 50,
        threads: 1);

    private static double?[] Thighs(MemoryStream stream, int rows)
    {
        var reader = ParquetReader.CreateAsync(stream, leaveStreamOpen: true).GetAwaiter().GetResult();
        using var group = reader.OpenRowGroupReader(0);
        var found = new double?[rows];
        group.ReadAsync<double>(reader.Schema.FindDataField("thigh_angle_sit_deg"), found.AsMemory()).AsTask().GetAwaiter().GetResult();
        return found;
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
