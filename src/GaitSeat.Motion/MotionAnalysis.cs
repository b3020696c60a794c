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
        return new ClipAnalysis(sightings, lengths, settings).Run();
    }
}
