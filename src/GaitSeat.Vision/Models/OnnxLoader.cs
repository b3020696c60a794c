using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>Opens an ONNX file with the session settings that we measured to be best, and looks whether we can feed it.</summary>
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

        if (Complaint(session) is not { } complaint) return session;
        session.Dispose();
        throw new ModelException($"model '{model.Name}' in {model.Path} {complaint}");
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

    private static SessionOptions SettingsOf(OnnxSessionOptions options)
    {
        if (!string.Equals(options.ExecutionProvider, "cpu", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"execution provider '{options.ExecutionProvider}' is not built in; allowed: cpu", nameof(options));
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
