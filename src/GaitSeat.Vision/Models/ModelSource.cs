namespace GaitSeat.Vision.Models;

/// <summary>One output of a sub-graph: the node that makes it, and the name it gets in the ONNX file.</summary>
public sealed record ModelOutput(string Node, string Name);

/// <summary>A model as it is published, and the part of its graph that we use.</summary>
public sealed record ModelSource
{
    public required string Name { get; init; }

    /// <summary>The file <c>Name.json</c> in the weights folder.</summary>
    public required SourceFile Topology { get; init; }

    /// <summary>The file <c>Name.bin</c> in the weights folder.</summary>
    public required SourceFile Weights { get; init; }

    /// <summary>The node of the published graph that our input takes the place of.</summary>
    public required string InputNode { get; init; }

    /// <summary>Shape of the input after the batch axis.</summary>
    public required int[] InputShape { get; init; }

    /// <summary>The outputs, in the order of the ONNX file.</summary>
    public required IReadOnlyList<ModelOutput> Outputs { get; init; }

    /// <summary>SPDX expression of the licence at the model's origin.</summary>
    public required string Licence { get; init; }

    /// <summary>Where the model comes from.</summary>
    public required string Origin { get; init; }

    /// <summary>Name of the input in the ONNX file.</summary>
    public const string InputName = "input";
}
