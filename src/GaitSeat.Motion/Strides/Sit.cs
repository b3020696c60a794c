namespace GaitSeat.Motion.Strides;

/// <summary>A sit instant.</summary>
/// <param name="Seconds">NaN where the signals had a hole.</param>
/// <param name="Se">Standard error, s.</param>
internal readonly record struct Sit(double Seconds, double Se)
{
    /// <summary>One that could not be told.</summary>
    public static Sit Missing { get; } = new(double.NaN, double.NaN);

    public bool IsMissing => double.IsNaN(Seconds);
}
