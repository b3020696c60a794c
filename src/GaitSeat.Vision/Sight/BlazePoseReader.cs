using GaitSeat.Model;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Sight;

/// <summary>BlazePose heavy on a square along the trunk that the first model found. One caller at a time.</summary>
internal sealed class BlazePoseReader(OnnxSession heavy, BodyPointSettings settings) : IDisposable
{
    private const int InputPx = 256;

    private static readonly InputFormat Format = new(false, false, [1 / 255f, 1 / 255f, 1 / 255f], [0, 0, 0], 0);

    private readonly float[] _input = new float[3 * InputPx * InputPx];

    /// <summary>33 points; null when the first model's trunk has no length.</summary>
    public RawPoints? Read(Frame frame, RawPoints first, bool mirrored)
    {
        if (BodyCrops.AlongTorso(first, settings.TorsoCropFactor, InputPx, mirrored) is not { } crop) return null;
        CropSampler.Fill(frame, crop, Format, _input);
        var o = heavy.Run(_input, 1);
        return BlazePoseDecoder.Decode(o["ld_3d"], o["heatmap"], crop, settings.RefinePeakMinimum);
    }

    public void Dispose() => heavy.Dispose();
}
