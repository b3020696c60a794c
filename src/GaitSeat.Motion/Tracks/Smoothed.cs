using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.Tracks;

/// <summary>A signal on the even grid of its segment, smoothed run by run; NaN in holes.</summary>
/// <param name="Values">One entry a sample.</param>
/// <param name="NoiseSd">Standard deviation of what noise the smoothed signal still carries, in its unit.</param>
/// <param name="NoiseSeconds">Over how long that noise hangs together, s.</param>
internal sealed record Smoothed(double[] Values, double NoiseSd, double NoiseSeconds)
{
    public static Smoothed Missing(int count)
    {
        var values = new double[count];
        Array.Fill(values, double.NaN);
        return new(values, double.NaN, double.NaN);
    }

    /// <summary>The same signal with its noise taken no smaller than so much.</summary>
    public Smoothed AtLeast(double noiseSd) => noiseSd > NoiseSd ? this with { NoiseSd = noiseSd } : this;

    /// <summary>Each value over its own divisor; the noise over their median.</summary>
    public Smoothed Over(double[] divisor)
    {
        var values = new double[Values.Length];
        for (var i = 0; i < values.Length; i++) values[i] = Values[i] / divisor[i];
        return new(values, NoiseSd / Robust.Median(divisor), NoiseSeconds);
    }
}
