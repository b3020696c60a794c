namespace GaitSeat.Faults;

/// <summary>The usual cautions. They go wherever findings are shown to people.</summary>
public static class Cautions
{
    public const string Text =
        """
        A finding is a prompt for the coach's eye, not a verdict: look at the clip at the second named before acting on it.
        Figures are given with their 95 % interval; limits marked "common practice, no source" are rules of thumb of the trade.
        Change stirrups at the halt, with a helper at the horse's head, a hole at a time, and the same on both sides.
        Ride in an approved, well-fitted, fastened riding helmet and boots with a heel; the iron leaves a finger's breadth either side of the boot.
        Stop at any pain, in rider or horse, and seek advice.
        Local rules and a qualified instructor on the spot come first.
        """;
}
