using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>What models are run on.</summary>
public enum InferenceDevice
{
    Cpu,

    /// <summary>A graphics card through CUDA, where the build has the provider and the machine the card and its libraries; the processor otherwise.</summary>
    Gpu,
}

/// <summary>What devices this build can try.</summary>
public static class InferenceDevices
{
    private const string Cuda = "CUDAExecutionProvider";

    static InferenceDevices() => OnnxSilence.Keep();

    /// <summary>Whether the ONNX Runtime of this build has a provider for a device; whether the machine has the card shows when a model is loaded.</summary>
    public static bool IsBuiltIn(InferenceDevice device) => device == InferenceDevice.Cpu || OrtEnv.Instance().GetAvailableProviders().Contains(Cuda);
}
