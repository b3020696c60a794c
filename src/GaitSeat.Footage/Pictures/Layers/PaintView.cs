using GaitSeat.Model;
using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>A scene on a picture of a size, with what the layers ask of both.</summary>
internal sealed class PaintView(OverlayScene scene, OverlaySettings settings, int widthPx, int heightPx)
{
    /// <summary>Width sizes are stated for, px.</summary>
    private const double DesignWidthPx = 1280;

    /// <summary>Smaller than this, lines and letters cannot be read: 0.65 makes 20 px letters 13 px high on 640 px.</summary>
    private const double LeastScale = 0.65;

    public OverlayScene Scene { get; } = scene;

    public OverlaySettings Settings { get; } = settings;

    public int WidthPx { get; } = widthPx;

    public int HeightPx { get; } = heightPx;

    public float Scale { get; } = (float)Math.Max(LeastScale, Math.Max(widthPx, heightPx) / DesignWidthPx);

    /// <summary>Scale of the marks on the rider: as the picture's, but finer on a small rider, whom thick lines would hide.</summary>
    public float FigureScale =>
        Point(BodyPoint.Shoulder) is { } shoulder && Point(BodyPoint.Hip) is { } hip
            ? Math.Clamp(SKPoint.Distance(shoulder, hip) / DesignTrunkPx, LeastFigureScale, Scale)
            : Scale;

    /// <summary>Hip to shoulder of the rider that line widths are stated for, px, and the finest lines still seen.</summary>
    private const float DesignTrunkPx = 80, LeastFigureScale = 0.4f;

    /// <summary>+1 where forward is to the right of the picture (or unknown), -1 to the left.</summary>
    public int Forward => Scene.Facing == Facing.Left ? -1 : 1;

    public double StripTop => Settings.ShowStrip ? HeightPx * (1 - Settings.StripHeightShare) : HeightPx;

    public Stride? Stride => Scene.Strides.FirstOrDefault(s => s.StartSeconds <= Scene.TimeSeconds && Scene.TimeSeconds < s.EndSeconds);

    public Spell? Spell => Scene.Spells.FirstOrDefault(s => s.StartSeconds <= Scene.TimeSeconds && Scene.TimeSeconds <= s.EndSeconds);

    /// <summary>A body point, or null where it is missing or too unsure.</summary>
    public SKPoint? Point(BodyPoint point)
    {
        if (Scene.TraceIndex < 0) return null;
        var track = Scene.Trace.Points[(int)point];
        var p = track[Scene.TraceIndex];
        return p.IsMissing || track.Confidence[Scene.TraceIndex] < Settings.MinimumConfidence ? null : new((float)p.X, (float)p.Y);
    }

    /// <summary>The ball of the foot on the stirrup: seven tenths of the way from heel to toe (ball of the foot over foot length about 0.73 less the toes of the boot; from memory).</summary>
    public SKPoint? Tread =>
        Point(BodyPoint.Heel) is { } heel && Point(BodyPoint.Toe) is { } toe ? new(heel.X + (toe.X - heel.X) * TreadShare, heel.Y + (toe.Y - heel.Y) * TreadShare) : null;

    private const float TreadShare = 0.7f;
}
