namespace GaitSeat.Vision.Sight;

/// <summary>A stretch of the clip, s; both ends belong to it.</summary>
public readonly record struct TimeSpanSeconds(double StartSeconds, double EndSeconds)
{
    public double Length => EndSeconds - StartSeconds;

    public bool Contains(double timeSeconds) => timeSeconds >= StartSeconds && timeSeconds <= EndSeconds;
}
