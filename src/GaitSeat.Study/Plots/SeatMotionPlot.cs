using GaitSeat.Model;

namespace GaitSeat.Study.Plots;

/// <summary>The plot of a clip: seat motion with stride cuts and tops, rise of each stride, thigh angle, one under the other.</summary>
public static class SeatMotionPlot
{
    /// <summary>Draws the plot twice: as PNG and as SVG. Files appear whole or not at all; those of the same names are replaced.</summary>
    /// <param name="motion">May be without spells, strides or frames: the panels are then empty and say so.</param>
    /// <exception cref="ArgumentException">A path is empty.</exception>
    /// <exception cref="IOException">A file cannot be written.</exception>
    public static void Save(ClipMotion motion, string title, string pngPath, string svgPath)
    {
        ArgumentNullException.ThrowIfNull(motion);
        ArgumentNullException.ThrowIfNull(title);
        ArgumentException.ThrowIfNullOrEmpty(pngPath);
        ArgumentException.ThrowIfNullOrEmpty(svgPath);
        using var sheet = new PlotSheet(motion, title);
        PlotFiles.Save(sheet.Plots, SheetSize.Large, pngPath, svgPath);
    }
}
