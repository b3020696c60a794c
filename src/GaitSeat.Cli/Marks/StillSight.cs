using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Studio.Accuracy.Marks;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Cli.Marks;

/// <summary>
/// A still on the same way as a clip: detector, choice of the rider, both body-point models, fusion. It is taken as a clip of two like frames, since the
/// pipeline reads every other frame as a mirror shows it; the answer is the mean of both, as the smoothing of a track makes it.
/// </summary>
internal sealed class StillSight(Workshop workshop)
{
    private static readonly double[] TimeSeconds = [0, 1 / 25.0];

    private readonly StillDecoder _decoder = new(workshop.Ffmpeg);

    public async Task<PictureReading> ReadAsync(MarkedPicture picture, string path, CancellationToken ct)
    {
        using var plain = await _decoder.DecodeAsync(path, 0, TimeSeconds[0], picture.WidthPx, picture.HeightPx, ct);
        using var mirrored = await _decoder.DecodeAsync(path, 1, TimeSeconds[1], picture.WidthPx, picture.HeightPx, ct);
        var look = new Look(0, workshop.Detector.Detect(0, plain));
        var rider = RiderChoice.Choose([look], picture.WidthPx, picture.HeightPx, workshop.Settings.Scout);
        if (rider.RiderAt(0) is not { } box) return PictureReading.Missing(picture, rider.MissingReason ?? RiderChoice.NoRider);
        RawPose[] poses = [workshop.Points.Read(0, plain, box, 0), workshop.Points.Read(0, mirrored, box, 1)];
        var sightings = new PointFusion(workshop.Settings.BodyPoints).Fuse(TimeSeconds, poses, rider, Unmoved(), Unmoved(), new bool[2], picture.WidthPx, picture.HeightPx);
        return new(picture, sightings.Facing[0], [.. sightings.Points.Select(t => new PointPx((t.XPx[0] + t.XPx[1]) / 2, (t.YPx[0] + t.YPx[1]) / 2))], null);
    }

    private static PatchMotion Unmoved() => new([0, 0], [0, 0], [0, 0], [1, 1], [0, 0], [0, 0]);
}
