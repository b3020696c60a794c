namespace GaitSeat.Motion.Gaits;

/// <summary>What one gait window shows. Amplitudes in percent of leg length.</summary>
/// <param name="BounceHz">Frequency that explains most of the vertical motion of trunk and tread.</param>
/// <param name="BouncePct">Amplitude of the bounce there.</param>
/// <param name="Periodicity">Share of the vertical motion explained, 0..1.</param>
/// <param name="HalfRatio">Bounce amplitude at half that frequency over <paramref name="BouncePct"/>.</param>
/// <param name="RisePct">Seat motion at half the frequency on which trunk and stirrup agree; NaN where the rider's points are not there.</param>
/// <param name="RiseSe">Standard error of either of its two parts (cosine and sine); grown where trunk and stirrup disagree.</param>
/// <param name="SpeedLegsPerSecond">NaN where unknown.</param>
internal readonly record struct WindowEvidence(
    double StartSeconds,
    double EndSeconds,
    double BounceHz,
    double BouncePct,
    double Periodicity,
    double HalfRatio,
    double RisePct,
    double RiseSe,
    double SpeedLegsPerSecond)
{
    public double CentreSeconds => (StartSeconds + EndSeconds) / 2;
}
