using GaitSeat.Model;
using ScottPlot;

namespace GaitSeat.Study.Plots;

/// <summary>Colours, from the Okabe and Ito set (told apart with any colour vision), and sizes of the plots.</summary>
internal static class PlotStyle
{
    public static readonly Color Ink = new(0x14, 0x1C, 0x24);
    public static readonly Color Faint = new(0x6B, 0x74, 0x7D);
    public static readonly Color Grid = new(0xE6, 0xE8, 0xEA);
    public static readonly Color Seat = new(0x00, 0x72, 0xB2);
    public static readonly Color Cut = new(0xE6, 0x9F, 0x00);
    public static readonly Color Top = new(0xD5, 0x5E, 0x00);
    public static readonly Color Thigh = new(0x00, 0x9E, 0x73);
    public static readonly Color ThighSit = new(0x00, 0x5F, 0x46);
    public const float LineWidth = 1.8f, CutWidth = 1.2f, MarkerSize = 7, TextSize = 14, TitleSize = 19, TickSpacingPx = 40;

    public static Color Shade(Gait gait) => gait switch
    {
        Gait.RisingTrot => new(0x56, 0xB4, 0xE9, 0x22),
        Gait.SittingTrot => new(0xCC, 0x79, 0xA7, 0x22),
        Gait.Canter => new(0xD5, 0x5E, 0x00, 0x1C),
        Gait.Walk => new(0x00, 0x9E, 0x73, 0x1C),
        _ => new(0x6B, 0x74, 0x7D, 0x1C),
    };

    public static string Name(Gait gait) => gait.ToTerm().Replace('_', ' ');

    /// <summary>A quiet panel: no frame but the axes it needs, horizontal grid only.</summary>
    public static void Apply(Plot plot, string verticalLabel)
    {
        plot.Font.Set(PlotFont.Name);
        plot.FigureBackground.Color = Colors.White;
        plot.Axes.Color(Faint);
        plot.Axes.Right.FrameLineStyle.IsVisible = false;
        plot.Axes.Top.FrameLineStyle.IsVisible = false;
        plot.Grid.MajorLineColor = Grid;
        plot.Grid.XAxisStyle.IsVisible = false;
        plot.Axes.Left.MinorTickStyle.Length = 0;
        plot.Axes.Bottom.MinorTickStyle.Length = 0;
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { MinimumTickSpacing = TickSpacingPx };
        plot.YLabel(verticalLabel, TextSize);
        plot.Axes.Left.Label.Bold = false;
        plot.Axes.Left.Label.ForeColor = Ink;
    }

    public static void Title(Plot plot, string title)
    {
        plot.Title(title, TitleSize);
        plot.Axes.Title.Label.ForeColor = Ink;
    }

    public static void HorizontalLabel(Plot plot, string label)
    {
        plot.XLabel(label, TextSize);
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Bottom.Label.ForeColor = Ink;
    }
}
