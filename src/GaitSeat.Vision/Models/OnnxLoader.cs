using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>Opens an ONNX file with the session settings that we measured to be best.</summary>
internal static class OnnxLoader
{
    public static InferenceSession Load(ModelFile model, OnnxSessionOptions options)
    {
        using var settings = SettingsOf(options);
        InferenceSession session;
        try
        {
            session = new InferenceSession(model.Path, settings);
        }
        catch (OnnxRuntimeException e)
        {
            throw new ModelException($"cannot load model '{model.Name}' from {model.Path}: {e.Message}", e);
        }

        if (session.InputMetadata.Count == 1 && session.InputMetadata.Values.Single().ElementType == typeof(float)) return session;
        var found = string.Join(", ", session.InputMetadata.Select(i => $"{i.Key} ({i.Value.ElementType.Name})"));
        session.Dispose();
        throw new ModelException($"model '{model.Name}' in {model.Path} has the inputs {found}; expected one input of 32-bit floats");
    }

    private static SessionOptions SettingsOf(OnnxSessionOptions options)
    {
        if (!string.Equals(options.ExecutionProvider, "cpu", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException(
                $"execution provider '{options.ExecutionProvider}' is not built in; allowed: cpu", nameof(options));
        }

        var settings = new SessionOptions
        {
            // Halves the time of the lower levels on CPU (blocked memory layout), our own measurement.
            GraphOptimizationLevel = GraphOptimizationLevel.ORT_ENABLE_ALL,
            ExecutionMode = ExecutionMode.ORT_SEQUENTIAL,
            IntraOpNumThreads = options.Threads,
            InterOpNumThreads = 1,
            LogSeverityLevel = OrtLoggingLevel.ORT_LOGGING_LEVEL_ERROR,
        };

        // A waiting thread that spins takes a core from the decoder and from the other session.
        settings.AddSessionConfigEntry("session.intra_op.allow_spinning", "0");
        return settings;
    }
}
