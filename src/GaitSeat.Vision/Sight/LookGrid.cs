namespace GaitSeat.Vision.Sight;

/// <summary>
/// When the looks over a whole clip fall: every so many frames from its first. Looks over parts of it are taken at the same times, and times at which nobody looked are filled in with nobody,
/// so that a rider's path does not depend on what was left out.
/// </summary>
/// <param name="StepSeconds">Time between two looks, s.</param>
/// <param name="FrameSeconds">Time between two frames, s.</param>
public readonly record struct LookGrid(double StepSeconds, double FrameSeconds)
{
    /// <summary>Where to begin reading so that the first frame is that of the first look not before a time: that time itself when it is a look's, or half a frame before the look.</summary>
    public double StartOf(double timeSeconds)
    {
        var look = Math.Ceiling((timeSeconds - (FrameSeconds / 2)) / StepSeconds) * StepSeconds;
        return Math.Abs(look - timeSeconds) < FrameSeconds / 2 ? timeSeconds : look - (FrameSeconds / 2);
    }

    /// <summary>The looks with an empty one at each time left out: before the first, between two, and not after the last.</summary>
    /// <param name="looks">In order of time.</param>
    public IReadOnlyList<Look> Filled(IReadOnlyList<Look> looks)
    {
        ArgumentNullException.ThrowIfNull(looks);
        var filled = new List<Look>();
        // A camera's own clock strays: what is missing is told by time, with half a step to spare.
        foreach (var look in looks)
        {
            var last = filled.Count > 0 ? filled[^1].TimeSeconds : -StepSeconds;
            for (var at = Math.Round((last + StepSeconds) / StepSeconds) * StepSeconds; at < look.TimeSeconds - (StepSeconds / 2); at += StepSeconds)
                if (at > last) filled.Add(new(at, []));
            filled.Add(look);
        }

        return filled;
    }
}
