namespace GaitSeat.Vision.Import;

/// <summary>A constant tensor: 32-bit floats, or whole numbers (int32 and bool).</summary>
internal sealed class Constant
{
    private readonly float[]? _floats;
    private readonly int[]? _ints;

    public Constant(float[] values, int[] shape)
    {
        _floats = values;
        Shape = shape;
    }

    public Constant(int[] values, int[] shape)
    {
        _ints = values;
        Shape = shape;
    }

    public int[] Shape { get; }

    public int Count => _floats?.Length ?? _ints!.Length;

    /// <summary>Whether it has no other axis than the last, and the same number throughout.</summary>
    public bool IsUniformByChannel => Count > 0 && Count == Shape.LastOrDefault(1) && Floats.AsSpan().Count(Floats[0]) == Count;

    public bool IsWhole => _ints is not null;

    public int[] Ints => _ints ?? throw new NodeException("has a constant of floats where whole numbers are expected");

    public float[] Floats => _floats ?? Array.ConvertAll(_ints!, i => (float)i);

    public Constant Reshaped(int[] shape)
    {
        var known = 1;
        foreach (var d in shape) known *= d == -1 ? 1 : d;
        if (known == 0 || Count % known != 0) throw new NodeException($"cannot reshape {Count} numbers to [{string.Join(',', shape)}]");
        var resolved = Array.ConvertAll(shape, d => d == -1 ? Count / known : d);
        return IsWhole ? new Constant(_ints!, resolved) : new Constant(_floats!, resolved);
    }

    /// <summary>Axis i of the result is axis <c>permutation[i]</c> of this one.</summary>
    public Constant Permuted(int[] permutation)
    {
        var shape = Array.ConvertAll(permutation, p => Shape[p]);
        return IsWhole ? new Constant(Permute(_ints!, permutation), shape) : new Constant(Permute(_floats!, permutation), shape);
    }

    private T[] Permute<T>(T[] source, int[] permutation)
    {
        var rank = permutation.Length;
        var strides = new int[rank];
        for (int i = rank - 1, s = 1; i >= 0; i--)
        {
            strides[i] = s;
            s *= Shape[i];
        }

        var target = new T[source.Length];
        var index = new int[rank];
        for (int i = 0, at = 0; i < target.Length; i++)
        {
            target[i] = source[at];
            for (var d = rank - 1; d >= 0; d--)
            {
                at += strides[permutation[d]];
                if (++index[d] < Shape[permutation[d]]) break;
                at -= strides[permutation[d]] * index[d];
                index[d] = 0;
            }
        }

        return target;
    }
}
