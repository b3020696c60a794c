using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>
/// A loaded model with one float input and float outputs. Buffers are made once per batch size and used again, so what
/// <see cref="Run"/> returns is good until the next run. One caller at a time; several callers take <see cref="Several"/>.
/// </summary>
public sealed class OnnxSession : IDisposable
{
    private readonly InferenceSession _session;
    private readonly Callers _callers;
    private readonly RunOptions _runOptions = new();
    private readonly Dictionary<int, OnnxBuffers> _buffers = [];
    private readonly string[] _inputNames;
    private readonly string[] _outputNames;
    private readonly int[] _inputShape;
    private bool _isDisposed;

    static OnnxSession() => OnnxSilence.Keep();

    /// <param name="model">The ONNX file.</param>
    /// <param name="threads">Threads inside one operator. Two sessions of one thread beat one of two (about 20 against 24 to 34 ms a picture for MoveNet Thunder on 2 cores, our own measurement).</param>
    /// <param name="device">What to run on if it is there; see <see cref="Device"/>.</param>
    /// <exception cref="ModelException">The file cannot be loaded, or has not one float input of fixed size (the batch may be free).</exception>
    public OnnxSession(ModelFile model, int threads, InferenceDevice device = InferenceDevice.Cpu)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        Model = model;
        (_session, Device) = OnnxLoader.Load(model, threads, device);
        _callers = new();
        _inputNames = [.. _session.InputNames];
        _outputNames = [.. _session.OutputNames];
        _inputShape = _session.InputMetadata[_inputNames[0]].Dimensions;
        InputLength = OnnxBuffers.Count(_inputShape.AsSpan(1));
    }

    private OnnxSession(OnnxSession other)
    {
        (Model, Device, InputLength) = (other.Model, other.Device, other.InputLength);
        (_session, _callers, _inputNames, _outputNames, _inputShape) = (other._session, other._callers, other._inputNames, other._outputNames, other._inputShape);
        Interlocked.Increment(ref _callers.Count);
    }

    public ModelFile Model { get; }

    /// <summary>What it runs on.</summary>
    public InferenceDevice Device { get; }

    /// <summary>Names of the outputs in the file's order.</summary>
    public IReadOnlyList<string> OutputNames => _outputNames;

    /// <summary>Shape of the input; the first is the batch, -1 where any will do.</summary>
    public IReadOnlyList<int> InputShape => _inputShape;

    /// <summary>Numbers in the input of one picture.</summary>
    public int InputLength { get; }

    /// <summary>One for each caller, all of one thread, on one loaded model: its weights are there once, the buffers once for each. They may be disposed of in any order.</summary>
    /// <inheritdoc cref="OnnxSession(ModelFile, int, InferenceDevice)"/>
    public static OnnxSession[] Several(ModelFile model, int callers, InferenceDevice device = InferenceDevice.Cpu)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(callers, 1);
        var first = new OnnxSession(model, threads: 1, device);
        return [first, .. Enumerable.Range(1, callers - 1).Select(_ => new OnnxSession(first))];
    }

    /// <summary>Runs the model on a batch.</summary>
    /// <param name="input">The pictures one after the other, each of <see cref="InputLength"/> numbers.</param>
    /// <param name="batch">How many pictures.</param>
    /// <exception cref="ArgumentException">
    /// The input has not <paramref name="batch"/> times <see cref="InputLength"/> numbers, or the model is made for another batch.
    /// </exception>
    public OnnxOutputs Run(ReadOnlySpan<float> input, int batch)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(batch, 1);
        if (_inputShape[0] > 0 && _inputShape[0] != batch)
        {
            throw new ArgumentException($"model '{Model.Name}' takes a batch of {_inputShape[0]} only, not {batch}", nameof(batch));
        }

        if (input.Length != batch * InputLength)
        {
            throw new ArgumentException(
                $"found {input.Length} numbers for model '{Model.Name}'; expected {batch} pictures of {InputLength}", nameof(input));
        }

        if (_buffers.TryGetValue(batch, out var buffers))
        {
            input.CopyTo(buffers.Input);
            _session.Run(_runOptions, _inputNames, buffers.InputValues, _outputNames, buffers.OutputValues);
        }
        else
        {
            _buffers[batch] = buffers = FirstRun(input, batch);
        }

        return new OnnxOutputs(buffers);
    }

    public void Dispose()
    {
        if (_isDisposed) return;
        _isDisposed = true;
        foreach (var b in _buffers.Values) b.Dispose();
        _buffers.Clear();
        _runOptions.Dispose();
        if (Interlocked.Decrement(ref _callers.Count) == 0) _session.Dispose();
    }

    /// <summary>A file need not state the shapes of its outputs: the first run of a batch size shows them.</summary>
    private OnnxBuffers FirstRun(ReadOnlySpan<float> input, int batch)
    {
        int[] shape = [batch, .. _inputShape.AsSpan(1)];
        var held = input.ToArray();
        var value = OnnxBuffers.Wrap(held, shape);
        using var results = _session.Run(_runOptions, _inputNames, [value], _outputNames);
        return new OnnxBuffers(held, value, _outputNames, results);
    }

    /// <summary>How many have the loaded model in use.</summary>
    private sealed class Callers
    {
        public int Count = 1;
    }
}
