namespace GaitSeat.Vision.Flow;

/// <summary>A window that was found again, level-0 px.</summary>
/// <param name="X">Where it was.</param>
/// <param name="Dx">How far it moved.</param>
/// <param name="Information">Inverse covariance of the motion, 1/px².</param>
/// <param name="Weight">Its say in a fit beside that, 0..1.</param>
internal readonly record struct FlowPoint(double X, double Y, double Dx, double Dy, Tensor Information, double Weight)
{
    /// <summary>Squared distance from a motion in units of what the window can tell: 1 is one standard deviation.</summary>
    public double SquaredDistance(double dx, double dy) => Information.Quadratic(Dx - dx, Dy - dy);
}
