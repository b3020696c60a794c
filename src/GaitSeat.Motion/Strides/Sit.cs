namespace GaitSeat.Motion.Strides;

/// <summary>A sit instant.</summary>
/// <param name="Seconds">NaN where the signals had a hole.</param>
/// <param name="Se">Standard error, s.</param>
internal readonly record struct Sit(double Seconds, double Se)
{
    public bool IsMissing => double.IsNaN(Seconds);
}
