using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Draws how a clip of the wide set is ridden.</summary>
internal static class WideRide
{
    /// <summary>Courses of gaits for mixed clips; most hold rising trot, some none.</summary>
    private static readonly Gait[][] Courses =
    [
        [Gait.Walk, Gait.RisingTrot], [Gait.RisingTrot, Gait.Walk], [Gait.RisingTrot, Gait.SittingTrot], [Gait.SittingTrot, Gait.RisingTrot], [Gait.RisingTrot, Gait.Canter],
        [Gait.Canter, Gait.RisingTrot], [Gait.RisingTrot, Gait.Walk, Gait.Halt], [Gait.Halt, Gait.Walk, Gait.RisingTrot], [Gait.Walk, Gait.Canter], [Gait.RisingTrot, Gait.SittingTrot, Gait.RisingTrot], [Gait.SittingTrot, Gait.Walk],
    ];

    public static ClipScript Draw(WideRow row, ClipScript script, SeededNoise noise)
    {
        var course = CourseOf(row, noise);
        var trots = course.Any(g => g is Gait.RisingTrot or Gait.SittingTrot);
        var thigh = ThighDeg(row.Stirrup, noise);
        var (horse, stature) = HorseAndRider(row, noise);
        script = script with
        {
            Gait = course[0],
            GaitChanges = ChangesOf(course, script.DurationSeconds, noise),
            HorseHeightCm = horse,
            StatureCm = stature,
            ThighOverStature = noise.Between(0.225, 0.245),
            ShankOverStature = noise.Between(0.238, 0.250),
            StrideHz = course[0] is Gait.RisingTrot or Gait.SittingTrot ? noise.Between(1.2, 1.5) : null,
            RiseCm = noise.Between(2, 18),
            ThighSitDeg = thigh,
            TrunkLeanDeg = noise.Between(-3, 18),
            FootPitchDeg = noise.Between(-4, 14),
            DriftSwingCm = noise.Between(0, 8),
            DriftOffsetCm = noise.Between(-6, 10),
            DriftPhase = noise.Uniform(),
            BounceCm = trots && course[0] is Gait.RisingTrot or Gait.SittingTrot ? noise.Between(6, 10) * horse / ClipScript.DrawnHorseCm : null,
            StirrupChange = row.Stirrup == "changed" ? new(script.DurationSeconds / 2, Later(thigh, noise)) : null,
        };
        return Faulty(row.Fault, script, noise);
    }

    private static ClipScript Faulty(string fault, ClipScript script, SeededNoise noise) => fault switch
    {
        "double-bounce" => script with { DoubleBounceAtSeconds = noise.Between(2.5, 5.5) },
        "other-diagonal" => script with { OtherDiagonal = true },
        "irregular-rise" => script with { RiseCvPct = noise.Between(15, 28), DurationCvPct = noise.Between(3, 5) },
        _ => script with { DurationCvPct = noise.Between(1, 2.5), RiseCvPct = noise.Between(2, 7) },
    };

    private static Gait[] CourseOf(WideRow row, SeededNoise noise)
    {
        var pick = noise.Uniform();
        if (row.Stirrup == "changed") return [Gait.RisingTrot, pick < 0.5 ? Gait.Walk : Gait.Halt, Gait.RisingTrot];
        return row.Gait switch
        {
            "rising" => [Gait.RisingTrot],
            "sitting" => [Gait.SittingTrot],
            "walk" => [Gait.Walk],
            "canter" => [Gait.Canter],
            "halt" => [Gait.Halt],
            _ => Courses[(int)(pick * Courses.Length)],
        };
    }

    private static GaitChange[] ChangesOf(Gait[] course, double seconds, SeededNoise noise)
    {
        var part = seconds / course.Length;
        return [.. course.Skip(1).Select((gait, i) => new GaitChange((i + 1 + noise.Between(-0.12, 0.12)) * part, gait))];
    }

    // Ponies carry children and small adults; a leg that reaches the ground is not ridden.
    private static (double HorseCm, double StatureCm) HorseAndRider(WideRow row, SeededNoise noise) => row.Horse switch
    {
        "pony" => (noise.Between(122, 147), noise.Between(142, 166)),
        "large" => (noise.Between(173, 184), noise.Between(162, 190)),
        _ => (noise.Between(157, 170), noise.Between(153, 188)),
    };

    private static double ThighDeg(string stirrup, SeededNoise noise) => stirrup switch
    {
        "short" => noise.Between(51, 63),
        "long" => noise.Between(28, 38),
        "changed" => noise.Uniform() < 0.5 ? noise.Between(36, 41) : noise.Between(50, 56),
        _ => noise.Between(38, 50),
    };

    // Two holes or three: each about 2.5 cm of leather, some 4 deg of thigh (computed from the leg's lengths).
    private static double Later(double thighDeg, SeededNoise noise) => thighDeg < 45 ? thighDeg + noise.Between(8, 13) : thighDeg - noise.Between(8, 13);
}
