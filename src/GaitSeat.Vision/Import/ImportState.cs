namespace GaitSeat.Vision.Import;

/// <summary>
/// What an import has made so far. Pictures are carried as NCHW from the first convolution on, and turned back only where an
/// operator or an output needs the published layout: turning at every node would double the time of a run.
/// </summary>
internal sealed class ImportState(IReadOnlyDictionary<string, Constant> weights)
{
    private readonly Dictionary<string, Value> _values = [];
    private readonly Dictionary<string, Constant> _constants = new(weights);
    private readonly Dictionary<(string Name, Layout Layout), string> _turned = [];

    public OnnxGraphWriter Onnx { get; } = new();

    public bool IsKnown(string node) => _values.ContainsKey(node) || _constants.ContainsKey(node);

    public bool IsConstant(string input) => _constants.ContainsKey(KeyOf(input));

    public Constant Constant(string input) =>
        _constants.TryGetValue(KeyOf(input), out var c) ? c : throw new NodeException($"needs a constant at '{input}'; it depends on the picture");

    public Value Value(string input) =>
        _values.TryGetValue(KeyOf(input), out var v) ? v : throw new NodeException($"needs a value at '{input}', which is not made before it");

    public Layout LayoutOf(string input) => IsConstant(input) ? Layout.Tf : Value(input).Layout;

    public int RankOf(string input) => IsConstant(input) ? Constant(input).Shape.Length : Value(input).Rank;

    /// <summary>NCHW if any of the inputs is so already.</summary>
    public Layout CommonLayout(IEnumerable<string> inputs) =>
        inputs.Any(i => LayoutOf(i) == Layout.Nchw) ? Layout.Nchw : Layout.Tf;

    public void Define(string node, Value value) => _values[node] = value;

    public void DefineConstant(string node, Constant value) => _constants[node] = value;

    /// <summary>The ONNX name of an input in the layout wanted.</summary>
    public string As(Layout layout, string input)
    {
        if (IsConstant(input)) return ConstantAs(layout, Constant(input));
        var value = Value(input);
        if (value.Layout == layout) return value.Name;
        if (value.Rank != 4) throw NodeException.NotSupported("a picture operator on rank", $"{value.Rank}", "4 (batch, rows, columns, channels)");
        if (!_turned.TryGetValue((value.Name, layout), out var name))
        {
            var permutation = layout == Layout.Nchw ? Axes.ToNchw : Axes.ToTf;
            _turned[(value.Name, layout)] = name = Onnx.Node("Transpose", [value.Name], OnnxAttribute.Of("perm", permutation));
        }

        return name;
    }

    private string ConstantAs(Layout layout, Constant c)
    {
        if (c.Count == 1) return Onnx.Floats(c.Floats);
        if (layout == Layout.Tf) return Onnx.Floats(c.Floats, c.Shape);
        if (c.Shape.Length > 4) throw NodeException.NotSupported("a constant of rank", $"{c.Shape.Length}", "0..4");

        // Broadcasting lines shapes up at their ends: fill with ones in front, then turn.
        int[] full = [.. Enumerable.Repeat(1, 4 - c.Shape.Length), .. c.Shape];
        var turned = c.Reshaped(full).Permuted(Axes.ToNchw);
        return Onnx.Floats(turned.Floats, turned.Shape);
    }

    private static string KeyOf(string input) => input.EndsWith(":0", StringComparison.Ordinal) ? input[..^2] : input;
}
