using GaitSeat.Model;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Sight;

/// <summary>MoveNet Thunder on a square around the rider's box.</summary>
internal sealed class MoveNetReader(OnnxSession thunder, double cropFactor) : IBoxPointReader
{
    private const int InputPx = 256;

    // RGB 0..255: the graph itself maps to -1..1.
    private static readonly InputFormat Format = new(false, false, [1, 1, 1], [0, 0, 0], 0);

    private readonly float[] _input = new float[3 * InputPx * InputPx];

    public RawPoints Read(Frame frame, BoxPx rider, bool mirrored)
    {
        var crop = BodyCrops.Around(rider, cropFactor, InputPx, mirrored);
        CropSampler.Fill(frame, crop, Format, _input);
        var o = thunder.Run(_input, 1);
        var maps = new MoveNetMaps(o["kpt_heatmap"], o["center"], o["kpt_regress"], o["kpt_offset"], InputPx / MoveNetDecoder.CellPx);
        return MoveNetDecoder.Decode(maps, crop);
    }

    public void Dispose() => thunder.Dispose();
}
