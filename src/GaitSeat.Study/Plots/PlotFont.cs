using ScottPlot;
using SkiaSharp;

namespace GaitSeat.Study.Plots;

/// <summary>Gives ScottPlot the shipped typeface (Inter, SIL Open Font License 1.1), so that a plot looks the same on every machine.</summary>
internal sealed class PlotFont : IFontResolver
{
    public const string Name = "Inter";

    private static readonly Lazy<PlotFont> Shared = new(() =>
    {
        var resolver = new PlotFont();
        Fonts.FontResolvers.Insert(0, resolver);
        return resolver;
    });

    private PlotFont()
    {
    }

    /// <summary>Registers the typeface once for the process; ScottPlot keeps its fonts in a static list.</summary>
    public static void Use() => _ = Shared.Value;

    /// <summary>The typeface for text that is drawn without ScottPlot.</summary>
    public static SKTypeface Typeface(bool bold) => Load(bold ? "Inter-SemiBold.otf" : "Inter-Regular.otf");

    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        fontName == Name ? Load(weight >= FontWeight.SemiBold ? "Inter-SemiBold.otf" : "Inter-Regular.otf") : null;

    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
        CreateTypeface(fontName, bold ? FontWeight.Bold : FontWeight.Normal, FontSlant.Upright, FontSpacing.Normal);

    private static SKTypeface Load(string file)
    {
        var name = $"GaitSeat.Fonts.{file}";
        using var stream = typeof(PlotFont).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font '{name}' is missing from the assembly; rebuild it.");
        return SKTypeface.FromStream(stream);
    }
}
