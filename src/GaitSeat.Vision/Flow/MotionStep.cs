namespace GaitSeat.Vision.Flow;

/// <summary>How a patch moved at the place of the seat since the frame before; NaN throughout where it could not be fitted.</summary>
/// <param name="XPx">To the right, analysis px.</param>
/// <param name="YPx">Down, analysis px.</param>
/// <param name="RotationRad">Turn, rad, positive clockwise on screen.</param>
/// <param name="Zoom">By what factor it grew; 1 = not at all.</param>
/// <param name="Points">How many points carried the fit; where it failed, how many were at hand.</param>
/// <param name="ResidualPx">Median distance of those points from the fit, analysis px.</param>
public readonly record struct MotionStep(double XPx, double YPx, double RotationRad, double Zoom, int Points, double ResidualPx)
{
    /// <summary>No motion by definition: the first frame and the frame after a cut.</summary>
    public static MotionStep Still => new(0, 0, 0, 1, 0, 0);

    public bool IsMissing => double.IsNaN(XPx);

    public static MotionStep NotFitted(int points) => new(double.NaN, double.NaN, double.NaN, double.NaN, points, double.NaN);
}
