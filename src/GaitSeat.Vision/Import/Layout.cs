namespace GaitSeat.Vision.Import;

/// <summary>How the axes of a value lie in the ONNX graph.</summary>
internal enum Layout
{
    /// <summary>As in the published graph: batch, rows, columns, channels for pictures.</summary>
    Tf,

    /// <summary>Batch, channels, rows, columns: what ONNX convolutions want.</summary>
    Nchw,
}

/// <summary>A value made so far.</summary>
/// <param name="Name">Its name in the ONNX graph.</param>
/// <param name="Rank">Number of axes, the batch included.</param>
internal readonly record struct Value(string Name, Layout Layout, int Rank);

internal static class Axes
{
    public static int[] ToNchw { get; } = [0, 3, 1, 2];

    public static int[] ToTf { get; } = [0, 2, 3, 1];

    /// <summary>Rows and columns of an NCHW value.</summary>
    public static int[] Spatial { get; } = [2, 3];

    /// <summary>Where an axis of the published graph lies in a value of the given layout.</summary>
    public static int Map(int axis, Layout layout, int rank)
    {
        var positive = axis < 0 ? axis + rank : axis;
        if (positive < 0 || positive >= rank) throw NodeException.NotSupported("axis", $"{axis}", $"-{rank}..{rank - 1}");
        return layout == Layout.Nchw ? Array.IndexOf(ToNchw, positive) : positive;
    }
}
