using GaitSeat.Model;
using GaitSeat.Vision.Flow;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>
/// A ride in four flat layers, each with its own known motion: surroundings that pan, a trunk that bounces and travels, a saddle cloth fixed to it,
/// and a rider whose leg swings and rises at half the bounce. The picture is 640x360, the rider 180 px tall.
/// </summary>
internal sealed record RideScene
{
    public const int Width = 640;
    public const int Height = 360;
    public const double RateHz = 30;

    private const double RiderPx = 180;
    private const double BounceHz = 2.6;

    private static readonly Texture Ground = new(11, 7, 90);
    private static readonly Texture Hair = new(12, 5, 1);
    private static readonly Texture Breeches = new(13, 5, 60);

    public double BouncePx { get; init; } = 7;

    public double PanPx { get; init; } = -12;

    /// <summary>How far the horse travels in the picture in a frame.</summary>
    public double TravelPx { get; init; } = 0.5;

    /// <summary>Texture of the coat, grey levels; 0 = perfectly smooth.</summary>
    public double CoatGrey { get; init; } = 25;

    public double StartX { get; init; } = 300;

    public bool TellHorse { get; init; } = true;

    /// <summary>Wrong by this share of the rider's height, slowly changing: as boxes of a detector are.</summary>
    public double HintError { get; init; }

    public PointPx SeatAt(int frame) => new(
        StartX + (TravelPx * frame), 170 + (BouncePx * Math.Sin(2 * Math.PI * BounceHz * frame / RateHz)));

    public FlowHints Hints(int frame)
    {
        var seat = SeatAt(frame);
        var wrong = HintError * RiderPx;
        var (x, y) = (seat.X + (wrong * Math.Sin(frame * 0.31)), seat.Y - Rise(frame) + (wrong * Math.Cos(frame * 0.23)));
        var rider = new BoxPx(x - (0.15 * RiderPx), y - (0.58 * RiderPx), 0.45 * RiderPx, RiderPx * (1 + (HintError * Math.Sin(frame * 0.17))));
        var horse = new BoxPx(seat.X - (0.8 * RiderPx) + wrong, seat.Y - (0.3 * RiderPx), 1.9 * RiderPx, 1.25 * RiderPx);
        return new FlowHints(rider, TellHorse ? horse : null, null);
    }

    public Frame Paint(int frame)
    {
        var (seat, rise) = (SeatAt(frame), Rise(frame));
        var swing = 8 * Math.Sin(2 * Math.PI * BounceHz / 2 * frame / RateHz);
        return Pictures.Paint(frame, Width, Height, (px, py) =>
        {
            var brightness = 130 + Ground.At(px - (PanPx * frame), py);
            var (x, y) = (px - seat.X, py - seat.Y);
            brightness = Over(brightness, 95 + (CoatGrey * Hair.At(x, y)), 1 - Math.Max(Math.Abs(x) - 115, Math.Max(-10 - y, y - 90)));
            brightness = Over(brightness, 215, 1 - Math.Max(Math.Abs(x) - 45, Math.Max(-2 - y, y - 42)));
            var (legX, legY) = (x - 8 - (swing * y / 80), y + rise);
            return Over(brightness, 60 + Breeches.At(legX, legY), 1 - Math.Max(Math.Abs(legX) - 15, Math.Max(-100 - legY, legY - 75)));
        });
    }

    private static double Rise(int frame) => 9 * (1 + Math.Sin(2 * Math.PI * BounceHz / 2 * frame / RateHz));

    /// <summary>One layer over another; the edge is one px soft, as an imaged edge is.</summary>
    private static double Over(double below, double above, double inside)
    {
        var share = Math.Clamp(inside, 0, 1);
        return (below * (1 - share)) + (above * share);
    }
}
