using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>Input and output memory of a session for one batch size, pinned for the runtime.</summary>
internal sealed class OnnxBuffers : IDisposable
{
    private OnnxBuffers(float[] input, OrtValue inputValue, string[] outputNames, int[][] outputShapes)
    {
        Input = input;
        InputValue = inputValue;
        OutputNames = outputNames;
        OutputShapes = outputShapes;
        Outputs = Array.ConvertAll(outputShapes, s => new float[Count(s)]);
        OutputValues = Outputs.Zip(outputShapes, Wrap).ToArray();
    }

    public float[] Input { get; }

    public OrtValue InputValue { get; }

    public string[] OutputNames { get; }

    public int[][] OutputShapes { get; }

    public float[][] Outputs { get; }

    public OrtValue[] OutputValues { get; }

    /// <summary>Runs once on an empty picture to learn the shapes of the outputs: a file need not state them.</summary>
    public static OnnxBuffers Make(InferenceSession session, RunOptions options, string inputName, int[] inputShape, int batch)
    {
        int[] shape = [batch, .. inputShape.AsSpan(1)];
        var input = new float[Count(shape)];
        var inputValue = Wrap(input, shape);
        string[] names = [.. session.OutputNames];
        using var probe = session.Run(options, [inputName], [inputValue], names);
        var shapes = probe.Select(v => Array.ConvertAll(v.GetTensorTypeAndShape().Shape, d => checked((int)d))).ToArray();
        return new OnnxBuffers(input, inputValue, names, shapes);
    }

    public static int Count(ReadOnlySpan<int> shape)
    {
        var n = 1;
        foreach (var d in shape) n = checked(n * d);
        return n;
    }

    public int IndexOf(string name)
    {
        var i = Array.IndexOf(OutputNames, name);
        return i >= 0 ? i : throw new ArgumentException($"no output '{name}'; the model has {string.Join(", ", OutputNames)}", nameof(name));
    }

    public void Dispose()
    {
        InputValue.Dispose();
        foreach (var v in OutputValues) v.Dispose();
    }

    private static OrtValue Wrap(float[] data, int[] shape) =>
        OrtValue.CreateTensorValueFromMemory(data, Array.ConvertAll(shape, d => (long)d));
}
