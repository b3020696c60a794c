using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>Opens an ONNX file with the session settings that we measured to be best, and looks whether we can feed it.</summary>
internal static class OnnxLoader
{
    /// <returns>The session, and what it runs on: the processor where the device wanted is not there.</returns>
    public static (InferenceSession Session, InferenceDevice Device) Load(ModelFile model, int threads, InferenceDevice wanted)
    {
        var (session, device) = OnGpu(model, threads, wanted) is { } onGpu ? (onGpu, InferenceDevice.Gpu) : (OnCpu(model, threads), InferenceDevice.Cpu);
        if (Complaint(session) is not { } complaint) return (session, device);
        session.Dispose();
        throw new ModelException($"model '{model.Name}' in {model.Path} {complaint}");
    }

    private static InferenceSession OnCpu(ModelFile model, int threads)
    {
        using var settings = Settings(threads);
        try
        {
            return new InferenceSession(model.Path, settings);
        }
        catch (OnnxRuntimeException e)
        {
            throw new ModelException($"cannot load model '{model.Name}' from {model.Path}: {e.Message}", e);
        }
    }

    /// <summary>Null where there is no card, or its libraries are missing: the runtime tells only by failing.</summary>
    private static InferenceSession? OnGpu(ModelFile model, int threads, InferenceDevice wanted)
    {
        if (wanted != InferenceDevice.Gpu || !InferenceDevices.IsBuiltIn(wanted)) return null;
        using var settings = Settings(threads);
        try
        {
            settings.AppendExecutionProvider_CUDA();
            return new InferenceSession(model.Path, settings);
        }
        catch (OnnxRuntimeException)
        {
            return null;
        }
    }

    private static string? Complaint(InferenceSession session)
    {
        var inputs = session.InputMetadata;
        if (inputs.Count != 1 || inputs.Values.Single().ElementType != typeof(float))
        {
            var found = string.Join(", ", inputs.Select(i => $"{i.Key} ({i.Value.ElementType?.Name})"));
            return $"has the inputs {found}; expected one input of 32-bit floats";
        }

        var shape = inputs.Values.Single().Dimensions;
        if (shape.Length < 2 || shape.Skip(1).Any(d => d < 1))
        {
            return $"has an input of shape [{string.Join(',', shape)}]; expected fixed sizes after the batch axis";
        }

        var others = session.OutputMetadata.Where(o => o.Value.ElementType != typeof(float)).Select(o => o.Key).ToArray();
        return others.Length == 0 ? null : $"has outputs that are not of 32-bit floats: {string.Join(", ", others)}";
    }

    private static SessionOptions Settings(int threads)
    {
        var settings = new SessionOptions
        {
            // Halves the time of the lower levels on CPU (blocked memory layout), our own measurement.
            GraphOptimizationLevel = GraphOptimizationLevel.ORT_ENABLE_ALL,
            ExecutionMode = ExecutionMode.ORT_SEQUENTIAL,
            IntraOpNumThreads = threads,
            InterOpNumThreads = 1,
            LogSeverityLevel = OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR,
        };

        // A waiting thread that spins takes a core from the decoder and from the other session.
        settings.AddSessionConfigEntry("session.intra_op.allow_spinning", "0");
        return settings;
    }
}
