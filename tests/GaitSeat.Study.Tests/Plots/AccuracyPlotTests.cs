using System.Xml.Linq;
using GaitSeat.Study.Plots;

namespace GaitSeat.Study.Tests.Plots;

public sealed class AccuracyPlotTests : IDisposable
{
    private const string PointColour = "#0072B2", FaintColour = "#6B747D", LineColour = "#E69F00", InsideColour = "#009E73", OutsideColour = "#D55E00";

    private readonly string _folder = Directory.CreateTempSubdirectory("accuracy-plots").FullName;

    [Fact]
    public void ErrorPlot_HasAPointForEachError_AndALineForEachLimit()
    {
        var svg = Svg((png, drawn) => ErrorPlot.Save([Panel(12, faint: 3, [(ErrorLines.Bias, 0.4), (ErrorLines.Lower, -1.2), (ErrorLines.Upper, 2)])], png, drawn));

        Assert.Equal(9, Filled(svg, PointColour));
        Assert.Equal(3, Filled(svg, FaintColour));
        Assert.Equal(3, svg.Descendants().Count(e => (string?)e.Attribute("stroke") == LineColour || (string?)e.Attribute("fill") == LineColour));
        Assert.Contains("bias +0.40", Words(svg));
        Assert.Contains("lower limit -1.20", Words(svg));
    }

    [Fact]
    public void UnknownLimits_AreNotDrawn() =>
        Assert.DoesNotContain(Words(Svg((png, svg) => ErrorPlot.Save([Panel(4, 0, [(ErrorLines.Bias, 0.4), (ErrorLines.Upper, double.NaN)])], png, svg))), w => w.Contains("upper", StringComparison.Ordinal));

    [Fact]
    public void NoErrors_SaysSo() =>
        Assert.Contains("Nothing was measured", Words(Svg((png, svg) => ErrorPlot.Save([Panel(0, 0, [])], png, svg))));

    [Fact]
    public void CoveragePlot_MarksGroupsOutsideTheBand()
    {
        CoverageRow[] rows = [new("yaw: 0-15", 40, 95), new("yaw: 15-25", 20, 70), new("fps: 25", 30, 100), new("fps: 50", 19, 60)];
        var svg = Svg((png, drawn) => CoveragePlot.Save([("rise_height_cm", rows)], 88, 99, png, drawn));

        Assert.Equal((1, 2, 1), (Filled(svg, InsideColour), Filled(svg, OutsideColour), Filled(svg, FaintColour)));
        Assert.Contains("yaw: 15-25 (n 20)", Words(svg));
    }

    [Fact]
    public void ConfusionPlot_SaysAmountAndShare()
    {
        var words = Words(Svg((png, svg) => ConfusionPlot.Save("Gait", ["walk", "halt"], ["walk", "sitting_trot"], [[6, 2], [0, 0]], "s", png, svg)));

        Assert.Contains("6.0 s", words);
        Assert.Contains("75.0 %", words);
        Assert.Contains("sitting trot", words);
        Assert.Equal(2, words.Count(w => w == "–"));
    }

    [Fact]
    public void WrongShape_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => ConfusionPlot.Save("t", ["a"], ["a", "b"], [[1]], "s", "a.png", "a.svg"));
        Assert.Throws<ArgumentException>(() => ErrorPlot.Save([], "a.png", "a.svg"));
        Assert.Throws<ArgumentException>(() => ErrorPlot.Save([Panel(3, 0, []) with { Error = [1] }], "a.png", "a.svg"));
        Assert.Throws<ArgumentException>(() => CoveragePlot.Save([], 88, 99, "a.png", "a.svg"));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static ErrorPanel Panel(int errors, int faint, IReadOnlyList<(string, double)> lines) => new(
        "rise", "true value, cm", "measured − true, cm",
        [.. Enumerable.Range(0, errors).Select(i => i + 3.0)], [.. Enumerable.Range(0, errors).Select(i => i % 3 - 0.5)], [.. Enumerable.Range(0, errors).Select(i => i < faint)], lines, Running: false);

    private XElement Svg(Action<string, string> save)
    {
        var (png, svg) = (Path.Combine(_folder, "p.png"), Path.Combine(_folder, "p.svg"));
        save(png, svg);
        Assert.True(new FileInfo(png).Length > 5000);
        return XDocument.Load(svg).Root!;
    }

    private static int Filled(XElement svg, string colour) => svg.Descendants().Count(e => e.Name.LocalName == "ellipse" && (string?)e.Attribute("fill") == colour);

    private static string[] Words(XElement svg) => [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value.Trim())];
}
