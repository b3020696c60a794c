using System.IO.Compression;
using GaitSeat.Faults.Training;

namespace GaitSeat.Faults.Tests.Training;

public sealed class PreparationTests
{
    [Fact]
    public void Features_AreCentredFilledAndTheirAbsenceFlagged()
    {
        double[][] vectors = [.. Enumerable.Range(0, 20).Select(i => new[] { i, 5.0, i < 5 ? double.NaN : 2 * i, i < 5 ? double.NaN : -i })];
        var preparation = FeaturePreparation.Learn(vectors);
        Assert.Equal([0, 2, 3], preparation.Kept);
        Assert.Equal([2], preparation.Flagged);
        var seen = preparation.Apply([9.5, 5, 24, -12]);
        Assert.Equal(0, seen[0], 5);
        Assert.Equal(0, seen[1], 5);
        Assert.Equal([0f, 0f, 1f], preparation.Apply([9.5, 5, double.NaN, double.NaN])[1..]);
    }

    [Fact]
    public void FeatureHardlyEverThere_IsLeftOut()
    {
        double[][] vectors = [.. Enumerable.Range(0, 50).Select(i => new[] { i, i < 9 ? i : double.NaN })];
        Assert.Equal([0], FeaturePreparation.Learn(vectors).Kept);
    }

    [Fact]
    public void SameEntriesOfAnotherHourAndOrder_AreTheSameBytes()
    {
        var (morning, evening) = (Zip(8, ["a", "b/c"]), Zip(20, ["b/c", "a"]));
        Assert.NotEqual(morning, evening);
        Assert.Equal(StableZip.Of(morning), StableZip.Of(evening));
        using var read = new ZipArchive(new MemoryStream(StableZip.Of(evening)));
        using var text = new StreamReader(read.GetEntry("b/c")!.Open());
        Assert.Equal("text of b/c", text.ReadToEnd());
    }

    private static byte[] Zip(int hour, string[] names)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var name in names)
            {
                var entry = zip.CreateEntry(name);
                entry.LastWriteTime = new(2026, 5, 1, hour, 0, 0, TimeSpan.Zero);
                using var writer = new StreamWriter(entry.Open());
                writer.Write("text of " + name);
            }
        }

        return stream.ToArray();
    }
}
