using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Where a square model input lies in the picture: a similarity (move, turn, scale), seen as it is or in a mirror. Both sides use continuous
/// pixels, (0,0) at the outer corner of the first pixel, so that no half pixel is lost on the way in or out.
/// </summary>
/// <param name="CentreX">Centre of the square in the picture, px.</param>
/// <param name="CentreY">Centre of the square in the picture, px.</param>
/// <param name="SidePx">Side of the square in the picture, px.</param>
/// <param name="AngleRad">Turn of the square, positive clockwise on screen; 0 is upright.</param>
/// <param name="InputPx">Side of the model input, px.</param>
/// <param name="Mirrored">The input shows the square with its left and right changed.</param>
public readonly record struct CropTransform(double CentreX, double CentreY, double SidePx, double AngleRad, int InputPx, bool Mirrored = false)
{
    /// <summary>Picture pixels per input pixel; above 1 the picture is shrunk.</summary>
    public double Scale => SidePx / InputPx;

    /// <summary>Picture pixels to the right in the square for one input pixel to the right.</summary>
    internal double Across => Mirrored ? -Scale : Scale;

    /// <summary>From input pixels to picture pixels.</summary>
    public PointPx ToPicture(double u, double v)
    {
        var (sin, cos) = Math.SinCos(AngleRad);
        double a = (u - InputPx / 2.0) * Across, b = (v - InputPx / 2.0) * Scale;
        return new(CentreX + a * cos - b * sin, CentreY + a * sin + b * cos);
    }

    /// <summary>From picture pixels to input pixels.</summary>
    public PointPx ToInput(double x, double y)
    {
        var (sin, cos) = Math.SinCos(AngleRad);
        double dx = x - CentreX, dy = y - CentreY;
        return new(InputPx / 2.0 + (dx * cos + dy * sin) / Across, InputPx / 2.0 + (dy * cos - dx * sin) / Scale);
    }

    /// <summary>The square that just holds the whole picture, centred: bars above and below, or left and right.</summary>
    public static CropTransform Letterbox(int widthPx, int heightPx, int inputPx) =>
        new(widthPx / 2.0, heightPx / 2.0, Math.Max(widthPx, heightPx), 0, inputPx);
}
