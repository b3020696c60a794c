namespace GaitSeat.Vision.Import;

/// <summary>
/// Converts a sub-graph of a TFJS graph model to ONNX. TF tensors are NHWC; 4-D tensors made by convolutions are carried as
/// NCHW and transposed only where an op or an output needs the TF layout.
/// </summary>
sealed class TfjsToOnnx
{
    enum Layout { Tf, Nchw }
    readonly record struct Value(string Name, Layout Layout);

    static readonly int[] ToNchw = [0, 3, 1, 2], ToNhwc = [0, 2, 3, 1], SpatialAxes = [2, 3];

    readonly TfjsModel _m;
    readonly OnnxGraph _g = new();
    readonly Dictionary<string, Value> _values = [];
    readonly Dictionary<string, Const> _consts;
    readonly Dictionary<(string, Layout), string> _transposed = [];

    TfjsToOnnx(TfjsModel m) { _m = m; _consts = new(m.Weights); }

    public static byte[] Convert(TfjsModel m, (string Node, string Name, int[] Dims) input, IEnumerable<(string Node, string Name)> outputs)
    {
        var c = new TfjsToOnnx(m);
        c._g.Input(input.Name, input.Dims);
        c._values[input.Node] = new(input.Name, Layout.Tf);
        foreach (var (node, name) in outputs)
        {
            foreach (var n in c.NeededFor(node)) c.Emit(n);
            c._g.Node("Identity", [c.Get(node, Layout.Tf)], [name]);
            c._g.Output(name);
        }
        return c._g.ToModel(18);
    }

    List<TfNode> NeededFor(string output)
    {
        var order = new List<TfNode>();
        var seen = new HashSet<string>();
        var stack = new Stack<(string Name, bool Done)>([(output, false)]);
        while (stack.TryPop(out var t))
        {
            if (t.Done) { order.Add(_m.Nodes[t.Name]); continue; }
            if (_values.ContainsKey(t.Name) || _consts.ContainsKey(t.Name) || !seen.Add(t.Name)) continue;
            stack.Push((t.Name, true));
            foreach (var i in _m.Nodes[t.Name].Inputs) stack.Push((i.Split(':')[0], false));
        }
        return order;
    }

    static string Key(string input) => input.EndsWith(":0") ? input[..^2] : input;
    bool IsConst(string input) => _consts.ContainsKey(Key(input));
    Const C(string input) => _consts[Key(input)];
    Layout LayoutOf(string input) => IsConst(input) ? Layout.Tf : _values[Key(input)].Layout;
    static int MapAxis(int axis) => axis switch { 0 => 0, 1 => 2, 2 => 3, 3 or -1 => 1, _ => throw new NotSupportedException($"axis {axis}") };

    string Get(string input, Layout want)
    {
        if (IsConst(input)) return ConstAs(C(input), want);
        var v = _values[Key(input)];
        if (v.Layout == want) return v.Name;
        if (!_transposed.TryGetValue((v.Name, want), out var t))
            _transposed[(v.Name, want)] = t = _g.Node("Transpose", [v.Name], ("perm", want == Layout.Nchw ? ToNchw : ToNhwc));
        return t;
    }

    string ConstAs(Const c, Layout want)
    {
        if (c.Count == 1) return _g.Floats(c.Floats);
        if (want == Layout.Tf) return _g.Floats(c.Floats, c.Shape);
        return c.Shape.Length switch
        {
            1 => _g.Floats(c.Floats, 1, c.Shape[0], 1, 1),
            4 => Permuted(c, ToNchw),
            _ => throw new NotSupportedException($"constant of rank {c.Shape.Length} in NCHW"),
        };
    }

    string Permuted(Const c, int[] perm, int[]? reshape = null)
    {
        var (data, shape) = Permute(c, perm);
        return _g.Floats(data, reshape ?? shape);
    }

    static (float[] Data, int[] Shape) Permute(Const c, int[] perm)
    {
        var src = c.Floats;
        var shape = perm.Select(p => c.Shape[p]).ToArray();
        var strides = new int[perm.Length];
        for (int i = perm.Length - 1, s = 1; i >= 0; i--) { strides[i] = s; s *= c.Shape[i]; }
        var step = perm.Select(p => strides[p]).ToArray();
        var data = new float[src.Length];
        var idx = new int[perm.Length];
        for (int i = 0, at = 0; i < data.Length; i++)
        {
            data[i] = src[at];
            for (var d = perm.Length - 1; d >= 0; d--)
            {
                at += step[d];
                if (++idx[d] < shape[d]) break;
                at -= step[d] * shape[d];
                idx[d] = 0;
            }
        }
        return (data, shape);
    }

    void Emit(TfNode n)
    {
        var x = n.Inputs;
        if (x.Length > 0 && x.All(IsConst)) { _consts[n.Name] = Fold(n); return; }
        void Put(string name, Layout l, int index = 0) => _values[index == 0 ? n.Name : $"{n.Name}:{index}"] = new(name, l);

        switch (n.Op)
        {
            case "Conv2D" or "_FusedConv2D" or "DepthwiseConv2dNative" or "FusedDepthwiseConv2dNative":
                Put(Conv(n), Layout.Nchw);
                break;
            case "MaxPool" or "AvgPool":
                Put(_g.Node(n.Op == "MaxPool" ? "MaxPool" : "AveragePool", [Get(x[0], Layout.Nchw)],
                    [("kernel_shape", n.Ints("ksize")[1..3]), ("strides", n.Ints("strides")[1..3]), .. Padding(n)]), Layout.Nchw);
                break;
            case "ResizeBilinear":
                var mode = n.Bool("align_corners") ? "align_corners" : n.Bool("half_pixel_centers") ? "half_pixel" : "asymmetric";
                Put(_g.Node("Resize", [Get(x[0], Layout.Nchw), "", "", _g.Longs(C(x[1]).Ints[0], C(x[1]).Ints[1])],
                    ("mode", "linear"), ("coordinate_transformation_mode", mode), ("axes", SpatialAxes)), Layout.Nchw);
                break;
            case "DepthToSpace":
                Put(_g.Node("DepthToSpace", [Get(x[0], Layout.Nchw)], ("blocksize", n.Int("block_size", 2)), ("mode", "DCR")), Layout.Nchw);
                break;
            case "Relu" or "Relu6" or "LeakyRelu" or "Sigmoid":
                Put(Activate(Get(x[0], LayoutOf(x[0])), n.Op, n), LayoutOf(x[0]));
                break;
            case "Add" or "AddV2" or "Sub" or "Mul" or "RealDiv":
                var bl = x.Any(i => LayoutOf(i) == Layout.Nchw) ? Layout.Nchw : Layout.Tf;
                Put(_g.Node(n.Op switch { "AddV2" => "Add", "RealDiv" => "Div", var o => o }, x.Select(i => Get(i, bl))), bl);
                break;
            case "Pad" or "PadV2":
                Put(Pad(n), LayoutOf(x[0]));
                break;
            case "ConcatV2":
                var parts = x[..^1];
                var cl = parts.Any(i => LayoutOf(i) == Layout.Nchw) ? Layout.Nchw : Layout.Tf;
                var axis = C(x[^1]).Ints[0];
                Put(_g.Node("Concat", parts.Select(i => Get(i, cl)), ("axis", cl == Layout.Nchw ? MapAxis(axis) : axis)), cl);
                break;
            case "SplitV":
                var sl = LayoutOf(x[0]);
                var sizes = C(x[1]).Ints;
                var outs = sizes.Select(_ => _g.NewName()).ToArray();
                var sa = C(x[2]).Ints[0];
                _g.Node("Split", [Get(x[0], sl), _g.Longs(Array.ConvertAll(sizes, s => (long)s))], outs, ("axis", sl == Layout.Nchw ? MapAxis(sa) : sa));
                for (var i = 0; i < outs.Length; i++) Put(outs[i], sl, i);
                break;
            case "Transpose":
                var perm = C(x[1]).Ints;
                var v = _values[Key(x[0])];
                if (v.Layout == Layout.Nchw && perm.SequenceEqual(ToNchw)) Put(v.Name, Layout.Tf);
                else if (v.Layout == Layout.Tf && perm.SequenceEqual(ToNhwc)) Put(v.Name, Layout.Nchw);
                else Put(_g.Node("Transpose", [Get(x[0], Layout.Tf)], ("perm", perm)), Layout.Tf);
                break;
            case "Reshape":
                Put(_g.Node("Reshape", [Get(x[0], Layout.Tf), _g.Longs(BatchFree(C(x[1]).Ints))]), Layout.Tf);
                break;
            case "Mean":
                if (!n.Bool("keep_dims") || LayoutOf(x[0]) != Layout.Nchw) throw new NotSupportedException($"Mean {n.Name}");
                Put(_g.Node("ReduceMean", [Get(x[0], Layout.Nchw), _g.Longs(C(x[1]).Ints.Select(a => (long)MapAxis(a)).ToArray())], ("keepdims", 1)), Layout.Nchw);
                break;
            case "Identity":
                _values[n.Name] = _values[Key(x[0])];
                break;
            default:
                throw new NotSupportedException($"{n.Op} ({n.Name})");
        }
    }

    /// <summary>A TF reshape target with batch 1 or -1 in front, as an ONNX one that keeps the batch (0 = copy).</summary>
    static long[] BatchFree(int[] target)
    {
        var s = Array.ConvertAll(target, v => (long)v);
        if (s[0] is 1 or -1) s[0] = 0;
        return s;
    }

    string Conv(TfNode n)
    {
        var x = n.Inputs;
        var w = C(x[1]);
        int kh = w.Shape[0], kw = w.Shape[1];
        var depthwise = n.Op.Contains("epthwise");
        var fused = n.Texts("fused_ops");
        var dil = n.Ints("dilations");
        var inputs = new List<string>
        {
            Get(x[0], Layout.Nchw),
            depthwise ? Permuted(w, [2, 3, 0, 1], [w.Shape[2] * w.Shape[3], 1, kh, kw]) : Permuted(w, [3, 2, 0, 1]),
        };
        if (fused.Contains("BiasAdd")) inputs.Add(_g.Floats(C(x[2]).Floats, C(x[2]).Count));
        var y = _g.Node("Conv", inputs, [("kernel_shape", new[] { kh, kw }), ("strides", n.Ints("strides")[1..3]),
            ("dilations", dil.Length == 4 ? dil[1..3] : [1, 1]), ("group", depthwise ? w.Shape[2] : 1), .. Padding(n)]);
        foreach (var f in fused.Where(f => f != "BiasAdd")) y = Activate(y, f, n);
        return y;
    }

    static (string, object)[] Padding(TfNode n) => n.Text("padding") switch
    {
        "SAME" => [("auto_pad", "SAME_UPPER")],
        "VALID" => [],
        "EXPLICIT" when n.Ints("explicit_paddings") is { Length: 8 } e => [("pads", new[] { e[2], e[4], e[3], e[5] })],
        var p => throw new NotSupportedException($"padding {p} ({n.Name})"),
    };

    string Activate(string x, string op, TfNode n) => op switch
    {
        "Relu" or "Sigmoid" => _g.Node(op, [x]),
        "Relu6" => _g.Node("Clip", [x, _g.Floats([0f]), _g.Floats([6f])]),
        "LeakyRelu" => _g.Node("LeakyRelu", [x], ("alpha", n.Float("leakyrelu_alpha", n.Float("alpha", 0.2f)))),
        _ => throw new NotSupportedException($"activation {op} ({n.Name})"),
    };

    string Pad(TfNode n)
    {
        var p = C(n.Inputs[1]);
        var l = LayoutOf(n.Inputs[0]);
        var rank = p.Shape[0];
        var rows = l == Layout.Nchw ? ToNchw : Enumerable.Range(0, rank).ToArray();
        var pads = new long[rank * 2];
        for (var i = 0; i < rank; i++) { pads[i] = p.Ints[rows[i] * 2]; pads[rank + i] = p.Ints[rows[i] * 2 + 1]; }
        List<string> inputs = [Get(n.Inputs[0], l), _g.Longs(pads)];
        if (n.Inputs.Length > 2) inputs.Add(_g.Floats(C(n.Inputs[2]).Floats));
        return _g.Node("Pad", inputs);
    }

    Const Fold(TfNode n)
    {
        var v = n.Inputs.Select(C).ToArray();
        switch (n.Op)
        {
            case "Identity": return v[0];
            case "Transpose":
                var perm = v[1].Ints;
                var (pd, ps) = Permute(v[0], perm);
                return v[0].I != null ? new(null, Array.ConvertAll(pd, f => (int)f), ps) : new(pd, null, ps);
            case "Reshape": return v[0] with { Shape = Resolve(v[1].Ints, v[0].Count) };
            case "Add" or "AddV2" when v[0].I is { } a && v[1].I is { } b && a.Length == b.Length:
                return v[0] with { I = a.Zip(b, (p, q) => p + q).ToArray() };
            case "SparseToDense":
                var shape = v[1].Ints;
                var dense = Enumerable.Repeat(v[3].Ints[0], shape.Aggregate(1, (p, q) => p * q)).ToArray();
                var rank = shape.Length;
                for (var i = 0; i < v[2].Count; i++)
                {
                    var at = 0;
                    for (var d = 0; d < rank; d++) at = at * shape[d] + v[0].Ints[i * rank + d];
                    dense[at] = v[2].Ints[i];
                }
                return new(null, dense, shape);
            default: throw new NotSupportedException($"constant {n.Op} ({n.Name})");
        }
    }

    static int[] Resolve(int[] target, int count)
    {
        var known = target.Where(t => t != -1).Aggregate(1, (a, b) => a * b);
        return Array.ConvertAll(target, t => t == -1 ? count / known : t);
    }
}
