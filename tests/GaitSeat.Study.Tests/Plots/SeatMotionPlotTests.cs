using System.Xml.Linq;
using GaitSeat.Model;
using GaitSeat.Study.Plots;
using SkiaSharp;

namespace GaitSeat.Study.Tests.Plots;

public sealed class SeatMotionPlotTests : IDisposable
{
    /// <summary>Stroke of the stride cuts, fill of the tops, stroke of the seat curve, as they stand in the SVG.</summary>
    private const string CutColour = "#E69F00", TopColour = "#D55E00", SeatColour = "#0072B2";

    private const int Panels = 3;
    private readonly string _folder = Directory.CreateTempSubdirectory("plots").FullName;

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    public void Svg_HasOneCutForEachSitInEachPanel(int strides)
    {
        var svg = Svg(Motions.Trot(strides));
        Assert.Equal((strides + 1) * Panels, Count(svg, "stroke", CutColour));
    }

    [Fact]
    public void Svg_HasATriangleAndAWhiskeredPointForEachStride()
    {
        var svg = Svg(Motions.Trot(6));
        Assert.Equal(2 * 6, Count(svg, "fill", TopColour));
        Assert.True(Count(svg, "stroke", TopColour) >= 6, "whiskers");
    }

    [Fact]
    public void Gap_BreaksTheCurve()
    {
        Assert.Equal(1, Count(Svg(Motions.Trot()), "stroke", SeatColour));
        Assert.Equal(2, Count(Svg(Motions.Trot(gap: true)), "stroke", SeatColour));
    }

    [Theory]
    [InlineData(true, "Rise, cm")]
    [InlineData(false, "Rise, % of leg")]
    public void Rise_InCentimetresOnlyWhereThereIsAScale(bool scale, string label) =>
        Assert.Contains(label, Words(Svg(Motions.Trot(scale: scale))));

    [Fact]
    public void Svg_SaysTitleGaitAndUnits()
    {
        var words = Words(Svg(Motions.Trot(), "A < B & C"));
        Assert.Contains("A < B & C", words);
        Assert.Contains("rising trot", words);
        Assert.Contains("Thigh angle, deg", words);
    }

    [Fact]
    public void Png_HasItsSizeAndInk()
    {
        var (png, _) = Save(Motions.Trot(), "t");
        using var picture = SKBitmap.Decode(png);
        Assert.Equal((1400, 960), (picture.Width, picture.Height));
        var seat = SKColor.Parse(SeatColour);
        Assert.True(picture.Pixels.Count(p => p == seat) > 500, "the curve");
        Assert.Equal(SKColors.White, picture.GetPixel(2, 2));
    }

    [Fact]
    public void SameMotion_SameBytes()
    {
        var (png1, svg1) = Save(Motions.Trot(), "t", "one");
        var (png2, svg2) = Save(Motions.Trot(), "t", "two");
        Assert.Equal(File.ReadAllBytes(png1), File.ReadAllBytes(png2));
        Assert.Equal(File.ReadAllBytes(svg1), File.ReadAllBytes(svg2));
    }

    [Fact]
    public void EmptyMotion_SaysSo()
    {
        var words = Words(Svg(Motions.Empty));
        Assert.Contains("No seat motion was measured", words);
        Assert.Contains("No stride was measured", words);
        Assert.Contains("No thigh angle was measured", words);
    }

    [Fact]
    public void OnlyUnknownValues_DoesNotFail()
    {
        var motion = Motions.Trot(2);
        Array.Fill(motion.Trace.SeatPctLeg, double.NaN);
        Array.Fill(motion.Trace.ThighAngleDeg, double.NaN);
        foreach (var stride in motion.Strides)
        {
            foreach (var definition in MeasureCatalogue.All) stride.Measures[definition.Measure] = Measured.Missing;
        }

        Assert.Equal(3 * Panels, Count(Svg(motion), "stroke", CutColour));
    }

    [Fact]
    public void NothingLeftBesideTheFiles()
    {
        Save(Motions.Trot(2), "t");
        Assert.Equal(2, Directory.GetFiles(_folder).Length);
    }

    [Theory]
    [InlineData("", "a.svg")]
    [InlineData("a.png", "")]
    public void EmptyPath_Refused(string png, string svg) =>
        Assert.ThrowsAny<ArgumentException>(() => SeatMotionPlot.Save(Motions.Empty, "t", png, svg));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private XDocument Svg(ClipMotion motion, string title = "t") => XDocument.Load(Save(motion, title).Svg);

    private (string Png, string Svg) Save(ClipMotion motion, string title, string name = "plot")
    {
        var (png, svg) = (Path.Combine(_folder, name + ".png"), Path.Combine(_folder, name + ".svg"));
        SeatMotionPlot.Save(motion, title, png, svg);
        return (png, svg);
    }

    private static int Count(XDocument svg, string attribute, string colour) =>
        svg.Descendants().Count(e => string.Equals((string?)e.Attribute(attribute), colour, StringComparison.OrdinalIgnoreCase));

    private static List<string> Words(XDocument svg) =>
        [.. svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value.Trim())];
}
