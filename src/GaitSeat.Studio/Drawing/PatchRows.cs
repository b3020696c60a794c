using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>
/// A value for each pixel of a patch, made ready when it is first asked for: most of a patch stays as it is. The part of a row that is ready is always one piece.
/// The memory is kept from patch to patch.
/// </summary>
internal abstract class PatchRows<T> where T : struct
{
    private T[] _values = [];
    private (int From, int EndExcl)[] _ready = [];

    public int Width { get; private set; }

    public int Height { get; private set; }

    /// <summary>The part of a row that was asked for; none: the end lies before the start.</summary>
    public (int From, int EndExcl) Ready(int y) => _ready[y];

    /// <summary>Values of a row, at least one.</summary>
    public Span<T> Row(int y, int from, int endExcl)
    {
        var ready = _ready[y];
        if (from < ready.From || endExcl > ready.EndExcl) Grow(y, from, endExcl);
        return _values.AsSpan(y * Width + from, endExcl - from);
    }

    /// <summary>A new patch, of which nothing is ready.</summary>
    protected void Begin(int width, int height)
    {
        (Width, Height) = (width, height);
        // Patches grow from frame to frame as the horse comes nearer; memory that was never written to costs nothing.
        if (_values.Length < width * height) _values = new T[BitOperations.RoundUpToPowerOf2((uint)(width * height))];
        if (_ready.Length < height) _ready = new (int, int)[height];
        _ready.AsSpan(0, height).Fill((int.MaxValue, int.MinValue));
    }

    /// <param name="from">Where in the row the values begin.</param>
    protected abstract void MakeReady(int y, int from, Span<T> values);

    private void Grow(int y, int from, int endExcl)
    {
        var (first, last) = _ready[y];
        if (last < first) (first, last) = (from, from);
        if (from < first) MakeReady(y, from, _values.AsSpan(y * Width + from, first - from));
        if (endExcl > last) MakeReady(y, last, _values.AsSpan(y * Width + last, endExcl - last));
        _ready[y] = (Math.Min(from, first), Math.Max(endExcl, last));
    }
}

/// <summary>Values that are 0 until they are set.</summary>
internal sealed class ClearedRows<T> : PatchRows<T> where T : struct
{
    public void Clear(int width, int height) => Begin(width, height);

    protected override void MakeReady(int y, int from, Span<T> values) => values.Clear();
}
