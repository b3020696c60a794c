using GaitSeat.Model;

namespace GaitSeat.Motion.Gaits;

/// <summary>A stretch of one gait within a segment, before its strides are cut.</summary>
/// <param name="BouncePct">Amplitude of the bounce, percent of leg length.</param>
internal sealed record RawSpell(Gait Gait, double StartSeconds, double EndSeconds, double Confidence, double BounceHz, double BouncePct)
{
    public double Seconds => EndSeconds - StartSeconds;
}
