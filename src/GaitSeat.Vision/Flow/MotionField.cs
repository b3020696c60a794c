namespace GaitSeat.Vision.Flow;

/// <summary>
/// A smooth motion of the picture around a place, level-0 px: shift, turn and zoom, and the bend a turning camera adds
/// (the quadratic flow of a plane, Longuet-Higgins and Prazdny 1980, from memory).
/// </summary>
/// <param name="Length">Unit of length of the coefficients beside the shift, px.</param>
/// <param name="P">Shift x, shift y, growth, turn, bend x, bend y; the last four are px at one unit of length.</param>
internal readonly record struct MotionField(double CentreX, double CentreY, double Length, MotionCoefficients P)
{
    public (double X, double Y) At(double px, double py)
    {
        var (x, y) = ((px - CentreX) / Length, (py - CentreY) / Length);
        return (
            P.ShiftX + (P.Growth * x) - (P.Turn * y) + (P.BendX * x * x) + (P.BendY * x * y),
            P.ShiftY + (P.Turn * x) + (P.Growth * y) + (P.BendX * x * y) + (P.BendY * y * y));
    }

    public double Zoom => Math.Sqrt(((1 + (P.Growth / Length)) * (1 + (P.Growth / Length))) + (P.Turn / Length * (P.Turn / Length)));

    public double RotationRad => Math.Atan2(P.Turn / Length, 1 + (P.Growth / Length));

    /// <summary>The same motion, told from another place. Exact without bend; with it, to first order of the distance.</summary>
    public MotionField AsSeenFrom(double x, double y)
    {
        var (shiftX, shiftY) = At(x, y);
        return this with { CentreX = x, CentreY = y, P = P with { ShiftX = shiftX, ShiftY = shiftY } };
    }
}

internal readonly record struct MotionCoefficients(double ShiftX, double ShiftY, double Growth = 0, double Turn = 0, double BendX = 0, double BendY = 0);
