using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

/// <summary>Truth and results made by hand, so that every figure can be worked out on paper.</summary>
internal static class Made
{
    /// <summary>A clip of 30 frames a second with the whole rider in every frame, and a true stride for each start given.</summary>
    public static ClipTruth Truth(double seconds, IEnumerable<StrideTruth> strides, IReadOnlyList<TruthSpell>? spells = null, double yawDeg = 0, double riderPx = 250)
    {
        const int rate = 30;
        var frames = (int)(seconds * rate);
        var truth = new ClipTruth
        {
            Clip = "made",
            Width = 1280,
            Height = 720,
            Fps = rate,
            Frames = frames,
            DurationS = seconds,
            Gait = "rising",
            StatureM = 1.7,
            Facing = "right",
            Camera = "pan",
            YawNominalDeg = yawDeg,
            PxPerMMean = 150,
            RiderPxHeightMean = riderPx,
            FirstInFrame = 0,
            LastInFrame = frames - 1,
            Strides = [.. strides],
            FrameRows = [.. Enumerable.Range(0, frames).Select(i => Frame(i, i / (double)rate, yawDeg, riderPx))],
        };
        return spells is null ? truth : truth with { Spells = spells };
    }

    public static StrideTruth TrueStride(double start, double seconds = 0.8, double rise = 8, string? fault = null) =>
        new() { SitS = start, TopS = start + seconds / 2, NextSitS = start + seconds, RiseCm = rise, DriftOffsetHipCm = 5, Fault = fault };

    public static Stride Stride(double start, double seconds = 0.8, double rise = 8, double se = 1, string quality = "good")
    {
        var measures = new MeasureSet();
        measures[StrideMeasure.RiseHeightCm] = new(rise, se);
        measures[StrideMeasure.StrideDuration] = new(seconds, 0.01);
        return new(1, 1, Facing.Right, start, start + seconds / 2, start + seconds, 1, quality, measures);
    }

    /// <summary>What the pipeline made: strides and spells; frames followed at the times where <paramref name="followed"/> holds.</summary>
    public static ClipResult Result(ClipTruth truth, IReadOnlyList<Stride> strides, IReadOnlyList<Spell>? spells = null, IReadOnlyList<LeftOut>? leftOut = null, Predicate<double>? followed = null)
    {
        double[] seconds = [.. truth.FrameRows.Select(r => r.TimeSeconds)];
        var trace = ClipMotion.Nothing.Trace with
        {
            TimeSeconds = seconds,
            ThighAngleDeg = [.. seconds.Select(t => followed is null || followed(t) ? 45 : double.NaN)],
        };
        return new(new(spells ?? [], strides, leftOut ?? [], trace), truth.Width, seconds.Length, leftOut ?? []);
    }

    public static Spell Spell(Gait gait, double start, double end) =>
        new(1, gait, Facing.Right, start, end, 1, double.NaN, double.NaN, double.NaN, 0, 0, Measured.Missing, double.NaN);

    /// <summary>An error of the rise in a clip.</summary>
    public static MeasureError Error(string clip, double error, double se = 1, bool trusted = true, double truth = 8) => new(
        clip, StrideMeasure.RiseHeightCm, truth, new(truth + error, se), 0, 0, trusted ? "good" : "untrusted_yaw", trusted, new(0, 0, 250, new Dictionary<string, string>()));

    private static FrameTruth Frame(int number, double seconds, double yawDeg, double riderPx) => new()
    {
        Frame = number,
        TimeSeconds = seconds,
        Points = new Dictionary<string, PointTruth>(),
        StridePhase = 0,
        PxPerM = 150,
        YawDeg = yawDeg,
        RiderPxHeight = riderPx,
        RiderFullInFrame = true,
        ThighDeg = 45,
        TrunkDeg = 8,
        RiseCm = 0,
        TreadFwdOfBarCm = 0,
        BounceCm = 0,
    };
}
