namespace GaitSeat.Model;

/// <summary>One body point over the frames of a clip, raw as the models gave it.</summary>
/// <param name="XPx">x per frame, analysis pixels; NaN where not seen.</param>
/// <param name="YPx">y per frame, analysis pixels; NaN where not seen.</param>
/// <param name="Confidence">0..1 per frame; 0 where not seen.</param>
/// <param name="SpreadPx">How far the models disagree on this point, px; NaN where only one saw it.</param>
public sealed record PointTrack(double[] XPx, double[] YPx, double[] Confidence, double[] SpreadPx)
{
    public static PointTrack Empty(int frames)
    {
        static double[] Filled(int n, double value)
        {
            var a = new double[n];
            Array.Fill(a, value);
            return a;
        }

        return new(Filled(frames, double.NaN), Filled(frames, double.NaN), new double[frames], Filled(frames, double.NaN));
    }

    public PointPx this[int frame] => new(XPx[frame], YPx[frame]);
}

/// <summary>
/// Motion from the frame before to this one, at the place of the seat, found by optical flow.
/// Index 0 and frames after a cut are 0; NaN where it could not be fitted.
/// </summary>
/// <param name="XPx">How far the patch moved right, px.</param>
/// <param name="YPx">How far the patch moved down, px.</param>
/// <param name="RotationRad">How far it turned, rad, positive clockwise on screen.</param>
/// <param name="Zoom">By what factor it grew; 1 = not at all.</param>
/// <param name="Points">How many points carried the fit.</param>
/// <param name="ResidualPx">Median distance of those points from the fit, px.</param>
public sealed record PatchMotion(double[] XPx, double[] YPx, double[] RotationRad, double[] Zoom, int[] Points, double[] ResidualPx);

/// <summary>Why a frame is not measured.</summary>
public enum FrameReason
{
    /// <summary>The frame is good.</summary>
    None,
    NoHorse,
    NoRider,
    RiderTooSmall,
    OutOfPicture,
    PointsUncertain,
    TurnedOut,
    TrunkLost,
}

/// <summary>
/// Everything the eyes saw in one clip: one rider, one horse, frame by frame. All arrays have one entry a frame.
/// Positions are in analysis pixels (the picture as decoded for analysis).
/// </summary>
public sealed record Sightings
{
    /// <summary>Size of the analysed picture, px.</summary>
    public required int WidthPx { get; init; }

    public required int HeightPx { get; init; }

    /// <summary>Presentation times, s, strictly increasing.</summary>
    public required double[] TimeSeconds { get; init; }

    public required BoxPx?[] Rider { get; init; }

    public required BoxPx?[] Horse { get; init; }

    /// <summary>Travel direction per frame.</summary>
    public required Facing[] Facing { get; init; }

    /// <summary>
    /// Turn of the rider out of the picture plane as near and far shoulder and hip show it, deg: + the near ones stand ahead of the far ones (the rider is turned away from the
    /// camera), - behind them; NaN where not seen, null where it was not looked for. Models show a part of the true turn only, with a steady error.
    /// </summary>
    public double[]? ViewTurnDeg { get; init; }

    /// <summary>The true turn where it is known from elsewhere (a surveyed camera, a made clip), same sign; null, as a rule, has it estimated.</summary>
    public double[]? KnownTurnDeg { get; init; }

    public required FrameReason[] Reason { get; init; }

    /// <summary>True where the picture jumps (another camera, an edit) between the frame before and this one.</summary>
    public required bool[] CutBefore { get; init; }

    /// <summary>Tracks by <see cref="BodyPoint"/>, in the order of the enum.</summary>
    public required PointTrack[] Points { get; init; }

    /// <summary>Whether the points stand at the joints and the boot's ends already (marked by hand, or made); otherwise the models' usual offsets are taken off.</summary>
    public bool PointsAreJoints { get; init; }

    /// <summary>The patch of horse under the saddle, from frame to frame.</summary>
    public required PatchMotion Trunk { get; init; }

    /// <summary>The standing surroundings, from frame to frame, as they move in the picture at the seat: what camera pan, roll and zoom do.</summary>
    public required PatchMotion Surroundings { get; init; }

    public int Count => TimeSeconds.Length;

    public PointTrack this[BodyPoint point] => Points[(int)point];
}
