using System.Globalization;
using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>
/// A loaded model with one float input and float outputs. Buffers are made once per batch size and used again, so what
/// <see cref="Run"/> returns is good until the next run. One caller at a time.
/// </summary>
public sealed class OnnxSession : IDisposable
{
    private readonly InferenceSession _session;
    private readonly RunOptions _runOptions = new();
    private readonly Dictionary<int, OnnxBuffers> _buffers = [];
    private readonly int[] _inputShape;
    private readonly string _inputName;

    /// <param name="model">The ONNX file.</param>
    /// <param name="threads">Threads inside one operator.</param>
    /// <exception cref="ModelException">The file cannot be loaded, or has not exactly one float input.</exception>
    public OnnxSession(ModelFile model, int threads)
        : this(model, new OnnxSessionOptions { Threads = threads })
    {
    }

    /// <inheritdoc cref="OnnxSession(ModelFile, int)"/>
    public OnnxSession(ModelFile model, OnnxSessionOptions options)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Threads, 1);
        Model = model;
        _session = OnnxLoader.Load(model, options);
        (_inputName, var input) = _session.InputMetadata.Single();
        _inputShape = input.Dimensions;
        OutputNames = _session.OutputNames;
    }

    public ModelFile Model { get; }

    /// <summary>Names of the outputs in the file's order.</summary>
    public IReadOnlyList<string> OutputNames { get; }

    /// <summary>Shape of the input; -1 where it is free (the batch).</summary>
    public IReadOnlyList<int> InputShape => _inputShape;

    /// <summary>Numbers in the input of one picture.</summary>
    public int InputLength => OnnxBuffers.Count(_inputShape.AsSpan(1));

    /// <summary>Runs the model on a batch.</summary>
    /// <param name="input">The pictures one after the other, each of <see cref="InputLength"/> numbers.</param>
    /// <param name="batch">How many pictures.</param>
    /// <exception cref="ArgumentException">The input has not <paramref name="batch"/> times <see cref="InputLength"/> numbers.</exception>
    public OnnxOutputs Run(ReadOnlySpan<float> input, int batch)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(batch, 1);
        if (input.Length != batch * InputLength)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"found {input.Length} numbers for model '{Model.Name}'; expected {batch} pictures of {InputLength}"), nameof(input));
        }

        if (!_buffers.TryGetValue(batch, out var buffers))
        {
            _buffers[batch] = buffers = OnnxBuffers.Make(_session, _runOptions, _inputName, _inputShape, batch);
        }

        input.CopyTo(buffers.Input);
        _session.Run(_runOptions, [_inputName], [buffers.InputValue], buffers.OutputNames, buffers.OutputValues);
        return new OnnxOutputs(buffers);
    }

    public void Dispose()
    {
        foreach (var b in _buffers.Values) b.Dispose();
        _buffers.Clear();
        _runOptions.Dispose();
        _session.Dispose();
    }
}
