using GaitSeat.Model;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Sight;

/// <summary>A user's own heat-map model on the part around the rider's box that its input (also an upright one) shows.</summary>
internal sealed class UserModelReader : IBoxPointReader
{
    private static readonly InputFormat Plain = new(false, false, [1, 1, 1], [0, 0, 0], 0);

    private readonly UserModel _model;
    private readonly double _cropFactor;
    private readonly OnnxSession _session;
    private readonly int _squarePx;
    private readonly float[] _square;
    private readonly byte[] _picture;
    private readonly float[] _input;

    public UserModelReader(UserModel model, OnnxSession session, double cropFactor)
    {
        (_model, _session, _cropFactor) = (model, session, cropFactor);
        _squarePx = Math.Max(model.Input.WidthPx, model.Input.HeightPx);
        _square = new float[3 * _squarePx * _squarePx];
        _picture = new byte[3 * model.Input.WidthPx * model.Input.HeightPx];
        _input = new float[_picture.Length];
    }

    public RawPoints Read(Frame frame, BoxPx rider, bool mirrored)
    {
        var crop = BodyCrops.Around(rider, _cropFactor, _squarePx, mirrored);
        CropSampler.Fill(frame, crop, Plain, _square);
        int width = _model.Input.WidthPx, height = _model.Input.HeightPx, left = (_squarePx - width) / 2, top = (_squarePx - height) / 2;
        for (var y = 0; y < height; y++)
        {
            var row = _square.AsSpan(3 * ((y + top) * _squarePx + left), 3 * width);
            for (var i = 0; i < row.Length; i++) _picture[3 * y * width + i] = (byte)Math.Clamp(MathF.Round(row[i]), 0, 255);
        }

        _model.Input.Write(_picture, _input);
        Span<HeatmapPoint> points = stackalloc HeatmapPoint[PointOrder.CocoCount];
        HeatmapDecoder.Decode(_session.Run(_input, 1)[_model.HeatmapOutput], _model.HeatmapRows, _model.HeatmapColumns, points);
        var found = RawPoints.OfCount(PointOrder.CocoCount);
        for (var k = 0; k < points.Length; k++)
        {
            var p = crop.ToPicture(points[k].X * width + left, points[k].Y * height + top);
            (found.X[k], found.Y[k], found.Score[k]) = ((float)p.X, (float)p.Y, (float)Math.Clamp(points[k].Score, 0, 1));
        }

        return found;
    }

    public void Dispose() => _session.Dispose();
}
