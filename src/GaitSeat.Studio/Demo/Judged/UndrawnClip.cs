using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio;

/// <summary>
/// A clip that is ridden and filmed but not drawn: the true body points stand in for the pictures and are put wrong as models put them wrong. Everything after the looking
/// can be tried on thousands of such clips in the time one takes to draw.
/// </summary>
public static class UndrawnClip
{
    /// <summary>Steady error of a point in a clip, each axis, share of the rider's height in the picture. Chosen so that strides come out about as wrong as on drawn clips (docs/accuracy.md; held by a test).</summary>
    private const double SteadyShare = 0.0065;

    /// <summary>Share of that error's variance that a rider keeps from clip to clip: what models see wrong hangs on build and breeches first (docs/accuracy.md), how much of it is not known; half is a choice.</summary>
    private const double OfTheRider = 0.5;

    /// <summary>The boot hides heel and toe.</summary>
    private const double SteadyShareOfBoot = 0.014;

    /// <summary>Error that changes from frame to frame, as for <see cref="SteadyShare"/>; alike over some frames, since models err alike on like pictures.</summary>
    private const double FrameShare = 0.009;

    private const int FramesAlike = 3;

    /// <summary>Error of a step of the saddle patch, px.</summary>
    private const double PatchPx = 0.3;

    private const int PatchPoints = 50;
    private const int Stream = 77;
    private const int RiderStream = 78;

    /// <summary>The truth of a script, as it is written beside a drawn clip.</summary>
    /// <exception cref="ArgumentException">The script cannot be ridden.</exception>
    public static ClipTruth TruthOf(ClipScript script, string name)
    {
        ArgumentNullException.ThrowIfNull(script);
        var ride = new Ride(script);
        var stage = new Stage(ride);
        return new TruthMaker(ride, stage, new StudioCamera(ride, stage)).Make(name);
    }

    /// <summary>What the eyes would have seen, with seeded errors.</summary>
    /// <param name="seed">Of the clip's own errors.</param>
    /// <param name="riderSeed">Of those the rider keeps.</param>
    public static Sightings See(ClipTruth truth, int seed, int riderSeed)
    {
        ArgumentNullException.ThrowIfNull(truth);
        var exact = new TrueSightings(truth, Blank(truth)).With(Swap.Points | Swap.Anchor | Swap.Yaw);
        var (noise, kept) = (new SeededNoise(seed, Stream), new SeededNoise(riderSeed, RiderStream));
        var forward = truth.FacingTerm == Facing.Left ? -1 : 1;
        return exact with { Points = [.. exact.Points.Select((p, i) => Spoilt(p, (BodyPoint)i, truth.RiderPxHeightMean, forward, noise, kept))], Trunk = Spoilt(exact.Trunk, noise), Surroundings = Spoilt(exact.Surroundings, noise) };
    }

    private static Sightings Blank(ClipTruth truth)
    {
        var rows = truth.FrameRows;
        return new()
        {
            WidthPx = truth.Width,
            HeightPx = truth.Height,
            TimeSeconds = [.. rows.Select(r => r.TimeSeconds)],
            Rider = [.. rows.Select(r => (BoxPx?)BoxOf(r))],
            Horse = new BoxPx?[rows.Count],
            Facing = [.. rows.Select(r => r.Facing ?? truth.FacingTerm)],
            Reason = new FrameReason[rows.Count],
            CutBefore = new bool[rows.Count],
            Points = [.. Enum.GetValues<BodyPoint>().Select(p => FrameTruth.PointNames.Contains(p.ToTerm()) ? Seen(rows.Count) : PointTrack.Empty(rows.Count))],
            Trunk = Still(rows.Count),
            Surroundings = Still(rows.Count),
        };
    }

    private static BoxPx BoxOf(FrameTruth row)
    {
        var (x, y) = (row.Points.Values.Select(p => p.Px.X).ToArray(), row["helmet_top"].Px.Y);
        return new(x.Min(), y, x.Max() - x.Min(), row.RiderPxHeight);
    }

    private static PointTrack Seen(int frames) => new(new double[frames], new double[frames], [.. Enumerable.Repeat(1.0, frames)], new double[frames]);

    private static PatchMotion Still(int frames) =>
        new(new double[frames], new double[frames], new double[frames], [.. Enumerable.Repeat(1.0, frames)], [.. Enumerable.Repeat(PatchPoints, frames)], new double[frames]);

    private static PointTrack Spoilt(PointTrack track, BodyPoint point, double riderPx, int forward, SeededNoise noise, SeededNoise kept)
    {
        var steady = riderPx * (point is BodyPoint.Heel or BodyPoint.Toe ? SteadyShareOfBoot : SteadyShare);
        var each = riderPx * FrameShare;
        double[] Axis(double[] exact, int sign)
        {
            var (offset, alike) = (steady * (sign * Math.Sqrt(OfTheRider) * kept.Normal() + Math.Sqrt(1 - OfTheRider) * noise.Normal()), Alike(exact.Length, each, noise));
            return [.. exact.Select((v, i) => v + offset + alike[i])];
        }

        // Two models whose mean errs by an amount differ by twice as much on each axis.
        return track with { XPx = Axis(track.XPx, forward), YPx = Axis(track.YPx, 1), SpreadPx = [.. track.SpreadPx.Select(_ => 2 * each * Math.Sqrt(Math.Pow(noise.Normal(), 2) + Math.Pow(noise.Normal(), 2)))] };
    }

    /// <summary>A moving mean of single errors, scaled to keep their standard deviation.</summary>
    private static double[] Alike(int frames, double sd, SeededNoise noise)
    {
        var single = Enumerable.Range(0, frames + FramesAlike - 1).Select(_ => sd * noise.Normal()).ToArray();
        return [.. Enumerable.Range(0, frames).Select(i => single.AsSpan(i, FramesAlike).ToArray().Sum() / Math.Sqrt(FramesAlike))];
    }

    private static PatchMotion Spoilt(PatchMotion patch, SeededNoise noise) => patch with
    {
        XPx = [.. patch.XPx.Select((v, i) => i == 0 ? v : v + PatchPx * noise.Normal())],
        YPx = [.. patch.YPx.Select((v, i) => i == 0 ? v : v + PatchPx * noise.Normal())],
    };
}
