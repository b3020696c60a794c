namespace GaitSeat.Architecture.Tests;

/// <summary>Small files with one reason to exist.</summary>
public sealed class SizeTests
{
    private const int LongestLines = 400;
    private const int MedianLines = 100;

    [Fact]
    public void NoFile_IsLongerThanTheLimit() => Assert.Empty(
        Lengths("src").Concat(Lengths("tests")).Where(f => f.Lines > LongestLines).Select(f => $"{House.Relative(f.Path)}: {f.Lines} lines; at most {LongestLines}"));

    [Fact]
    public void HalfOfTheFiles_AreShort()
    {
        var sorted = Lengths("src").Select(f => f.Lines).Order().ToList();
        Assert.InRange(sorted[sorted.Count / 2], 1, MedianLines);
    }

    private static IEnumerable<(string Path, int Lines)> Lengths(string folder) =>
        House.Sources(folder).Select(p => (p, File.ReadLines(p).Count()));
}
