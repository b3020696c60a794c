namespace GaitSeat.Vision.Models;

/// <summary>The outputs of one run, lent: the next run of the same session writes over them.</summary>
public readonly ref struct OnnxOutputs
{
    private readonly OnnxBuffers _buffers;

    internal OnnxOutputs(OnnxBuffers buffers) => _buffers = buffers;

    /// <summary>The numbers of an output, row-major.</summary>
    /// <exception cref="ArgumentException">The model has no output of that name.</exception>
    public ReadOnlySpan<float> this[string name] => _buffers.Outputs[_buffers.IndexOf(name)];

    /// <summary>The shape of an output, the batch first.</summary>
    /// <exception cref="ArgumentException">The model has no output of that name.</exception>
    public ReadOnlySpan<int> ShapeOf(string name) => _buffers.OutputShapes[_buffers.IndexOf(name)];
}
