namespace GaitSeat.Motion.Strides;

/// <summary>
/// The horse's own clock: a rider sits at one and the same point of the trunk's bounce, and the bounce is seen in the horse, free of the noise of the
/// rider's points.
/// </summary>
internal static class BounceClock
{
    /// <summary>The low of the bounce that belongs to each sit, all at about the same distance from it; missing where it could not be told.</summary>
    public static List<Sit> Beats(IReadOnlyList<Sit> sits, LowPhase bounce)
    {
        if (!sits.Any(s => !s.IsMissing)) return [.. sits];
        var best = sits.Where(s => !s.IsMissing).MinBy(s => s.Se).Seconds;
        var lag = best - bounce.LowNear(best).Seconds;
        return [.. sits.Select(s => s.IsMissing || double.IsNaN(lag) ? Sit.Missing : bounce.LowNear(s.Seconds - lag))];
    }
}
