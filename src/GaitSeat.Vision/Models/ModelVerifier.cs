using GaitSeat.Vision.Models.Reference;

namespace GaitSeat.Vision.Models;

/// <summary>Runs the fixed picture through a model and compares.</summary>
internal static class ModelVerifier
{
    private const double Allowed = 1e-3;

    /// <summary>
    /// Landmarks are in pixels of a 256 px crop (up to 230 here) and end in long sums of 32-bit floats: two orders of summing differ by
    /// 0.0012 px on this picture, by up to 0.012 px on real frames (our own measurements). 0.01 px is 4e-5 of the crop.
    /// </summary>
    private const double AllowedLandmarkPx = 0.01;

    public static ModelVerification Verify(ModelFile model, InferenceDevice device)
    {
        var source = ModelCatalogue.All.FirstOrDefault(s => s.Name == model.Name);
        if (source is null || ReferenceValues.For(model.Name) is not { } reference)
        {
            throw new ArgumentException(
                $"no reference values for model '{model.Name}'; there are some for {string.Join(", ", ModelCatalogue.All.Select(s => s.Name))}", nameof(model));
        }

        using var session = new OnnxSession(model, threads: 1, device);
        var outputs = session.Run(ReferenceInput.For(source), batch: 1);
        var differences = new List<OutputDifference>();
        foreach (var expected in reference.Outputs) differences.Add(Compare(expected, outputs[expected.Name]));
        return new ModelVerification(model.Name, session.Device, reference.Runtime, differences);
    }

    private static OutputDifference Compare(ReferenceOutput expected, ReadOnlySpan<float> found)
    {
        var allowed = expected.Name == "ld_3d" ? AllowedLandmarkPx : Allowed;
        var count = expected.Shape.Aggregate(1, (a, d) => a * d);
        if (found.Length != count) return new OutputDifference(expected.Name, double.NaN, double.NaN, allowed);
        var greatest = Math.Abs(found[expected.PeakIndex] - expected.PeakValue);
        for (var i = 0; i < expected.Values.Length; i++) greatest = Math.Max(greatest, Math.Abs(found[i * expected.Step] - expected.Values[i]));
        double sum = 0, sumAbs = 0;
        foreach (var v in found)
        {
            sum += v;
            sumAbs += Math.Abs(v);
        }

        var mean = Math.Max(Math.Abs(sum - expected.Sum), Math.Abs(sumAbs - expected.SumAbs)) / count;
        return new OutputDifference(expected.Name, greatest, mean, allowed);
    }
}
