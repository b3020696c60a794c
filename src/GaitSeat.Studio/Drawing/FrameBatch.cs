namespace GaitSeat.Studio;

/// <summary>Consecutive frames drawn at once, one a core, into buffers that are used again.</summary>
internal sealed class FrameBatch
{
    private readonly FrameMaker _maker;
    private readonly byte[][] _frames;
    private readonly Shutter[] _shutters;

    /// <param name="shutters">One a core; batches that are never drawn at once may share them.</param>
    public FrameBatch(FrameMaker maker, Shutter[] shutters)
    {
        (_maker, _shutters) = (maker, shutters);
        _frames = [.. shutters.Select(_ => new byte[maker.FrameBytes])];
    }

    public int First { get; private set; }

    public int Count { get; private set; }

    public ReadOnlyMemory<byte> Frame(int i) => _frames[i];

    /// <summary>Draws frames from <paramref name="first"/> on, as many as there are buffers, up to <paramref name="endExcl"/>.</summary>
    public async Task DrawAsync(int first, int endExcl, CancellationToken ct)
    {
        (First, Count) = (first, Math.Clamp(endExcl - first, 0, _frames.Length));
        await Parallel.ForAsync(0, Count, ct, (i, _) =>
        {
            _maker.Draw(first + i, _shutters[i], _frames[i]);
            return ValueTask.CompletedTask;
        });
    }
}
