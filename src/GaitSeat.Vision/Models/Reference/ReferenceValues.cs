using System.Text.Json;

namespace GaitSeat.Vision.Models.Reference;

/// <summary>What the weights' own runtime made of the test picture.</summary>
/// <param name="Model">Name in the catalogue.</param>
/// <param name="Runtime">Runtime and version that made the values.</param>
internal sealed record ReferenceValues(string Model, string Runtime, ReferenceOutput[] Outputs)
{
    /// <summary>The values kept for a model, or null where there are none (a user's own model).</summary>
    public static ReferenceValues? For(string model)
    {
        using var stream = typeof(ReferenceValues).Assembly.GetManifestResourceStream($"reference/{model}.json");
        return stream is null ? null : JsonSerializer.Deserialize<ReferenceValues>(stream, JsonSerializerOptions.Web);
    }
}

/// <summary>A sample of one output.</summary>
/// <param name="Step">Every which value is kept in <paramref name="Values"/>, counted from 0.</param>
/// <param name="Sum">Sum over all values.</param>
/// <param name="SumAbs">Sum of sizes over all values.</param>
/// <param name="PeakIndex">Place of the greatest value.</param>
internal sealed record ReferenceOutput(
    string Name, int[] Shape, int Step, double Sum, double SumAbs, int PeakIndex, double PeakValue, double[] Values);
