namespace GaitSeat.Motion.Measures;

/// <summary>Where a stride lies, in positions on its samples.</summary>
internal readonly record struct StrideSpan(double Sit, double Top, double NextSit)
{
    public double Length => NextSit - Sit;

    public StrideSpan From(double offset) => new(Sit - offset, Top - offset, NextSit - offset);
}

/// <summary>The samples of one stride with some room on either side, by <see cref="Channel"/>.</summary>
internal sealed record StrideData(double[][] Values, double StepSeconds)
{
    public double[] this[Channel channel] => Values[(int)channel];
}
