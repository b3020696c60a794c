namespace GaitSeat.Vision.Import;

/// <summary>What convolutions and pools have in common: window, stride, padding.</summary>
internal static class Picture
{
    public static void RequireNhwc(GraphNode node)
    {
        if (node.Text("data_format", "NHWC") is var found && found != "NHWC") throw NodeException.NotSupported("data_format", found, "NHWC");
    }

    /// <summary>Rows and columns of a per-axis attribute; 1, 1 if it is not there.</summary>
    public static int[] Window(GraphNode node, string key) => node.Ints(key) switch
    {
        [] => [1, 1],
        [1, var rows, var columns, 1] => [rows, columns],
        var other => throw NodeException.NotSupported(key, $"[{string.Join(',', other)}]", "[1,rows,columns,1]"),
    };

    /// <summary>SAME puts the odd pixel at the end (right and bottom), as ONNX's SAME_UPPER does.</summary>
    public static OnnxAttribute[] Padding(GraphNode node) => node.Text("padding", "") switch
    {
        "SAME" => [OnnxAttribute.Of("auto_pad", "SAME_UPPER")],
        "VALID" => [],
        "EXPLICIT" when node.Ints("explicit_paddings") is { Length: 8 } e => [OnnxAttribute.Of("pads", [e[2], e[4], e[3], e[5]])],
        var other => throw NodeException.NotSupported("padding", $"'{other}'", "SAME, VALID, EXPLICIT with 8 explicit_paddings"),
    };
}
