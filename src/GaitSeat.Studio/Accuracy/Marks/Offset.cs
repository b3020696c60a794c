namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>A way in the picture, in percent of the rider's height.</summary>
/// <param name="ForwardPct">+ the way the rider faces.</param>
/// <param name="UpPct">+ up.</param>
public readonly record struct Offset(double ForwardPct, double UpPct)
{
    public double LengthPct => Math.Sqrt(ForwardPct * ForwardPct + UpPct * UpPct);
}
