using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>
/// Leaves frames out so that every n-th stays, n the least that brings the mean rate under the limit: even steps are kinder to the smoothing
/// that follows than a just-so rate.
/// </summary>
internal static class Thinning
{
    /// <summary>Mean rates up to this much over the limit are left alone, so that 60.0x Hz from a phone's clock is not halved.</summary>
    private const double RateTolerance = 0.02;

    /// <summary>n; 1 where all stay.</summary>
    public static double Every(ClipInfo clip, ReadSettings settings) =>
        Math.Max(1, Math.Ceiling(clip.AverageFrameRateHz / settings.MaxRateHz - RateTolerance));
}
