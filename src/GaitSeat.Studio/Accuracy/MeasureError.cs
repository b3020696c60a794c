using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>One measured value of one stride beside the true one.</summary>
/// <param name="StartSeconds">Where the measured stride begins, s.</param>
/// <param name="TrueStartSeconds">Where the true one begins, s.</param>
/// <param name="Quality">The stride's words of care.</param>
/// <param name="Trusted">Whether the row stands for itself; false where <paramref name="Quality"/> says it is not to be trusted.</param>
public sealed record MeasureError(
    string Clip, StrideMeasure Measure, double Truth, Measured Measured, double StartSeconds, double TrueStartSeconds, string Quality, bool Trusted, Circumstances Circumstances)
{
    public double Error => Measured.Value - Truth;

    public bool HeldByInterval => Math.Abs(Error) <= Measured.HalfWidth95;
}
