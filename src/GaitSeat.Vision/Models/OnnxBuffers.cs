using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>Input and output memory of a session for one batch size, pinned for the runtime.</summary>
internal sealed class OnnxBuffers : IDisposable
{
    private readonly string[] _outputNames;

    /// <param name="results">What a first run gave: shapes and numbers are taken over.</param>
    public OnnxBuffers(float[] input, OrtValue inputValue, string[] outputNames, IReadOnlyList<OrtValue> results)
    {
        Input = input;
        InputValues = [inputValue];
        _outputNames = outputNames;
        OutputShapes = [.. results.Select(r => Array.ConvertAll(r.GetTensorTypeAndShape().Shape, d => checked((int)d)))];
        Outputs = [.. results.Select(r => r.GetTensorDataAsSpan<float>().ToArray())];
        OutputValues = [.. Outputs.Zip(OutputShapes, Wrap)];
    }

    public float[] Input { get; }

    public OrtValue[] InputValues { get; }

    public int[][] OutputShapes { get; }

    public float[][] Outputs { get; }

    public OrtValue[] OutputValues { get; }

    public static OrtValue Wrap(float[] data, int[] shape) =>
        OrtValue.CreateTensorValueFromMemory(data, Array.ConvertAll(shape, d => (long)d));

    public static int Count(ReadOnlySpan<int> shape)
    {
        var n = 1;
        foreach (var d in shape) n = checked(n * d);
        return n;
    }

    public int IndexOf(string name)
    {
        var i = Array.IndexOf(_outputNames, name);
        return i >= 0 ? i : throw new ArgumentException($"no output '{name}'; the model has {string.Join(", ", _outputNames)}", nameof(name));
    }

    public void Dispose()
    {
        foreach (var v in InputValues) v.Dispose();
        foreach (var v in OutputValues) v.Dispose();
    }
}
