using System.Runtime.InteropServices;

namespace GaitSeat.Vision.Models;

/// <summary>
/// ONNX Runtime as it is delivered tells its maker of its use over the network unless a variable says no before it is first used ("Disabling Telemetry" in the package's Privacy.md).
/// The footage shows people: nobody is called. The launcher sets the variable too; here it holds however the program is started.
/// </summary>
internal static class OnnxSilence
{
    private const string Variable = "ORT_DISABLE_TELEMETRY", No = "1";

    /// <summary>To be called before anything else of ONNX Runtime.</summary>
    public static void Keep()
    {
        // Processes that this one starts read this one.
        Environment.SetEnvironmentVariable(Variable, No);
        // On Unix .NET has a copy of the environment; the library reads the process's own.
        if (!OperatingSystem.IsWindows() && SetVariable(Variable, No, 1) != 0) throw new ModelException($"the variable {Variable} cannot be set: ONNX Runtime would call its maker");
    }

    [DllImport("libc", EntryPoint = "setenv", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetVariable(string name, string value, int overwrite);
}
