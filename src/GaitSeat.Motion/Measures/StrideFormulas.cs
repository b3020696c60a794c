using GaitSeat.Model;

namespace GaitSeat.Motion.Measures;

/// <summary>
/// All measures of one stride that come from its signals, by <see cref="StrideMeasure"/>: lengths in legs under their centimetre name,
/// angles in deg, shares 0..1, speeds in legs a second; NaN for the others.
/// </summary>
internal static class StrideFormulas
{
    public static double[] Of(StrideData data, StrideSpan span, StrideSettings settings, MovementNoise noise, double hipToBarLegs)
    {
        var values = new double[MeasureCatalogue.All.Count];
        Array.Fill(values, double.NaN);
        values[(int)StrideMeasure.StrideDuration] = span.Length * data.StepSeconds;
        PostureFormulas.Fill(data, span, settings, values);
        MovementFormulas.Fill(data, span, settings, noise, values);
        var leather = values[(int)StrideMeasure.StirrupLengthIndex] - hipToBarLegs;
        var swing = values[(int)StrideMeasure.StirrupDriftSwingCm];
        if (leather > 0) values[(int)StrideMeasure.LeatherSwing] = double.RadiansToDegrees(2 * Math.Atan(swing / (2 * leather)));
        return values;
    }
}
