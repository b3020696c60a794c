namespace GaitSeat.Vision.Import;

/// <summary>Nodes that depend on constants only are worked out while importing.</summary>
internal static class ConstantFolding
{
    public static Constant Fold(GraphNode node, ImportState state)
    {
        var inputs = Array.ConvertAll(node.Inputs, state.Constant);
        return node.Op switch
        {
            "Identity" => inputs[0],
            "Transpose" => inputs[0].Permuted(inputs[1].Ints),
            "Reshape" => inputs[0].Reshaped(inputs[1].Ints),
            "Add" or "AddV2" => Sum(inputs[0], inputs[1]),
            "SparseToDense" => Dense(inputs[0].Ints, inputs[1].Ints, inputs[2].Ints, inputs[3].Ints[0]),
            _ => throw new NodeException(
                "the operator is not supported on constants; supported: Identity, Transpose, Reshape, Add, AddV2, SparseToDense"),
        };
    }

    private static Constant Sum(Constant a, Constant b)
    {
        if (!a.Shape.SequenceEqual(b.Shape))
        {
            throw NodeException.NotSupported(
                "a sum of shapes", $"[{string.Join(',', a.Shape)}] and [{string.Join(',', b.Shape)}]", "constants of one shape");
        }

        return a.IsWhole && b.IsWhole
            ? new Constant([.. a.Ints.Zip(b.Ints, (x, y) => x + y)], a.Shape)
            : new Constant([.. a.Floats.Zip(b.Floats, (x, y) => x + y)], a.Shape);
    }

    /// <summary>Row i of <paramref name="indices"/> is the place of value i; a single value goes to every place.</summary>
    private static Constant Dense(int[] indices, int[] shape, int[] values, int otherwise)
    {
        var dense = new int[shape.Aggregate(1, (a, d) => a * d)];
        Array.Fill(dense, otherwise);
        for (var i = 0; i < indices.Length / shape.Length; i++)
        {
            var at = 0;
            for (var d = 0; d < shape.Length; d++) at = at * shape[d] + indices[i * shape.Length + d];
            dense[at] = values[values.Length == 1 ? 0 : i];
        }

        return new Constant(dense, shape);
    }
}
