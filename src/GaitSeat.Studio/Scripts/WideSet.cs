namespace GaitSeat.Studio;

/// <summary>
/// Clips of 8 s over the whole range of footage people bring, by a balanced design: each condition takes its values in fixed shares, shuffled over the clips,
/// and no clip carries more than three adverse ones. Every second clip is "core": turned by 15 deg at most and the rider 200 px tall or more.
/// The same for a seed on every machine.
/// </summary>
public static class WideSet
{
    private const int Stream = 12;

    /// <param name="seed">Fixes every draw.</param>
    /// <param name="count">Number of clips; from about 100 every condition has a fair number.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is below 1.</exception>
    public static IReadOnlyList<ClipScript> Scripts(int seed, int count = 100)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var rows = WideDesign.Rows(new SeededNoise(seed, Stream), count);
        return [.. rows.Select((row, i) => WideClip.Draw(row, new SeededNoise(unchecked(seed * 7919 + i), Stream + 1)))];
    }
}
