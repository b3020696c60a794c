namespace GaitSeat.Motion.Signals;

/// <summary>Finds instants among rising times by halving: a long clip has windows by the thousand, and a walk through all its frames for each would grow with its length squared.</summary>
internal static class Instants
{
    /// <summary>Index of the first time not before an instant; the count where there is none.</summary>
    public static int NotBefore(ReadOnlySpan<double> seconds, double instant)
    {
        var at = seconds.BinarySearch(instant);
        return at < 0 ? ~at : at;
    }

    /// <summary>The times nearer to an instant than <paramref name="halfWidthSeconds"/>.</summary>
    public static Range Near(ReadOnlySpan<double> seconds, double instant, double halfWidthSeconds)
    {
        var from = NotBefore(seconds, instant - halfWidthSeconds);
        if (from < seconds.Length && seconds[from] <= instant - halfWidthSeconds) from++;
        return from..Math.Max(from, NotBefore(seconds, instant + halfWidthSeconds));
    }
}
