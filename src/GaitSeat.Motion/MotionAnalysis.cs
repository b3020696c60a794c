using GaitSeat.Model;

namespace GaitSeat.Motion;

/// <summary>From what the eyes saw in one clip to gait spells, strides and measures. Pure: the same sightings and settings give the same numbers.</summary>
public static class MotionAnalysis
{
    /// <summary>Analyses one clip.</summary>
    /// <exception cref="ArgumentException">Arrays of unequal length, or times that do not increase.</exception>
    public static ClipMotion Analyse(Sightings sightings, BodyLengths lengths, MotionSettings settings)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        ArgumentNullException.ThrowIfNull(settings);
        SightingsCheck.Check(sightings);
        var n = sightings.Count;
        static double[] Missing(int n)
        {
            var a = new double[n];
            Array.Fill(a, double.NaN);
            return a;
        }

        return new([], [], [], new MotionTrace
        {
            TimeSeconds = [.. sightings.TimeSeconds],
            SeatPctLeg = Missing(n),
            BouncePctLeg = Missing(n),
            TreadForwardPctLeg = Missing(n),
            ThighAngleDeg = Missing(n),
            Points = sightings.Points,
        });
    }
}
