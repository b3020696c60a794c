using GaitSeat.Model;
using MathNet.Numerics.Distributions;

namespace GaitSeat.Faults.Rules;

/// <summary>Which side of the limit is the fault.</summary>
internal enum Side
{
    Above,
    Below,
}

/// <summary>One measure held against one limit, in the measure's unit.</summary>
/// <param name="Phrase">How a person says the value, with <c>{0}</c> where value and interval stand.</param>
internal sealed record Condition(StrideMeasure Measure, Side Side, double Threshold, string Phrase)
{
    /// <summary>Whether a value is past the limit; false where it is missing.</summary>
    public bool IsPast(double value) => Side == Side.Above ? value > Threshold : value < Threshold;

    /// <summary>Probability that the true value is past the limit when the error is normal; 0 where value or error is missing.</summary>
    public double Probability(Measured value)
    {
        if (value.IsMissing || double.IsNaN(value.StandardError)) return 0;
        if (value.StandardError <= 0) return IsPast(value.Value) ? 1 : 0;
        var z = (value.Value - Threshold) / value.StandardError;
        return Normal.CDF(0, 1, Side == Side.Above ? z : -z);
    }
}
