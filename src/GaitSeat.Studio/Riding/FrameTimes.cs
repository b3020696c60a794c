namespace GaitSeat.Studio;

/// <summary>When each frame is exposed (its middle), s from the first.</summary>
internal static class FrameTimes
{
    /// <summary>The clock of the clip; times of a varying rate lie on its ticks, so that file and truth agree exactly.</summary>
    private const double TicksPerSecond = Footage.ClipEncoder.TicksPerSecond;

    /// <summary>Share of frames a phone leaves out when it is dark or busy, and how far the rest stray from the beat, share of an interval. No source.</summary>
    private const double LostShare = 0.06;
    private const double StrayShare = 0.18;

    public static double[] Of(ClipScript script) =>
        script.VariableRate ? Uneven(script) : [.. Enumerable.Range(0, script.FrameCount).Select(i => i / script.FrameRateHz)];

    private static double[] Uneven(ClipScript script)
    {
        var noise = new SeededNoise(script.Seed, stream: 7);
        var times = new List<double> { 0 };
        for (var beat = 1; beat < script.FrameCount; beat++)
        {
            var (lost, stray) = (noise.Uniform() < LostShare, StrayShare * (noise.Uniform() - 0.5));
            if (!lost) times.Add(Math.Round((beat + stray) / script.FrameRateHz * TicksPerSecond) / TicksPerSecond);
        }

        return [.. times];
    }
}
