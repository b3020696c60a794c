using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Refuses scripts that cannot be ridden or drawn, with what is allowed.</summary>
internal static class ScriptCheck
{
    /// <exception cref="ArgumentException">Names every value out of range.</exception>
    public static void Demand(ClipScript script)
    {
        ArgumentNullException.ThrowIfNull(script);
        var wrong = new List<string>();
        if (script.Gait == Gait.Unknown) wrong.Add("gait: a known gait is needed");
        if (script.Facing == Facing.Unknown) wrong.Add("facing: left or right is needed");
        Within(wrong, "frame_rate_hz", script.FrameRateHz, 5, 240);
        Within(wrong, "duration_seconds", script.DurationSeconds, 0.2, 600);
        Within(wrong, "width_px", script.WidthPx, 160, 3840);
        Within(wrong, "height_px", script.HeightPx, 120, 2160);
        if (script.WidthPx % 2 != 0 || script.HeightPx % 2 != 0) wrong.Add("width_px, height_px: even numbers are needed (the video format halves its colour planes)");
        Within(wrong, "rider_height_px", script.RiderHeightPx, 20, 0.62 * script.HeightPx);
        Within(wrong, "stature_cm", script.StatureCm, 120, 210);
        Within(wrong, "thigh_over_stature", script.ThighOverStature, 0.20, 0.26);
        Within(wrong, "shank_over_stature", script.ShankOverStature, 0.22, 0.27);
        Within(wrong, "stride_hz", script.StrideHzOrUsual, 0, 3);
        Within(wrong, "rise_cm", script.RiseCm, 0, 25);
        Within(wrong, "thigh_sit_deg", script.ThighSitDeg, 15, 75);
        Within(wrong, "trunk_lean_deg", script.TrunkLeanDeg, -25, 45);
        Within(wrong, "foot_pitch_deg", script.FootPitchDeg, -30, 30);
        Within(wrong, "drift_swing_cm", script.DriftSwingCm, 0, 20);
        Within(wrong, "drift_offset_cm", script.DriftOffsetCm, -15, 20);
        Within(wrong, "bounce_cm", script.BounceCmOrUsual, 0, 25);
        Within(wrong, "camera_distance_m", script.CameraDistanceM, 5, 60);
        Within(wrong, "zoom_change", script.ZoomChange, -0.4, 0.6);
        Within(wrong, "yaw_deg", script.YawDeg, -MaxYawDeg(script.Way), MaxYawDeg(script.Way));
        Within(wrong, "horse_height_cm", script.HorseHeightCm, 100, 200);
        Within(wrong, "circle_diameter_m", script.CircleDiameterM, 6, 60);
        Within(wrong, "roll_deg", script.RollDeg, -15, 15);
        Within(wrong, "shutter_seconds", script.ShutterSeconds, 1e-4, 0.1);
        Within(wrong, "light", script.Light, 0.05, 1.5);
        Within(wrong, "crf", script.Crf, 0, 51);
        Within(wrong, "post_every_m", script.PostEveryM, 0, 20);
        if (script.PostEveryM is > 0 and < 0.5) wrong.Add("post_every_m: 0 for none, or 0.5 and more");
        if (script.StirrupChange is { } change) Within(wrong, "stirrup_change.thigh_sit_deg", change.ThighSitDeg, 15, 75);
        Gaits(wrong, script);
        Room(wrong, script);
        Within(wrong, "duration_cv_pct", script.DurationCvPct, 0, 8);
        Within(wrong, "rise_cv_pct", script.RiseCvPct, 0, 30);
        Within(wrong, "noise_sd", script.NoiseSd, 0, 20);
        if (wrong.Count > 0) throw new ArgumentException("The clip script cannot be made: " + string.Join("; ", wrong) + ".", nameof(script));
    }

    private static double MaxYawDeg(Way way) => way == Way.ConstantYaw ? 60 : 35;

    private static void Gaits(List<string> wrong, ClipScript script)
    {
        var after = 0.0;
        foreach (var change in script.GaitChanges)
        {
            if (change.Gait == Gait.Unknown) wrong.Add("gait_changes: a known gait is needed");
            if (!(change.AtSeconds > after)) wrong.Add(FormattableString.Invariant($"gait_changes: times must rise from 0; {change.AtSeconds} comes after {after}"));
            after = change.AtSeconds;
        }

        if (script.DoubleBounceAtSeconds is not null && script.Gait != Gait.RisingTrot) wrong.Add("double_bounce_at_seconds: only a clip that begins in rising trot has one");
    }

    private static void Room(List<string> wrong, ClipScript script)
    {
        const double NearestM = 3;
        if (script.Way == Way.CircleFromOutside && script.CameraDistanceM < script.CircleDiameterM / 2 + NearestM)
            wrong.Add(FormattableString.Invariant($"camera_distance_m is {script.CameraDistanceM}, outside a circle of {script.CircleDiameterM} m at least {script.CircleDiameterM / 2 + NearestM} is needed"));
    }

    private static void Within(List<string> wrong, string name, double value, double low, double high)
    {
        if (!(value >= low && value <= high)) wrong.Add(FormattableString.Invariant($"{name} is {value}, allowed {low} to {high}"));
    }
}
