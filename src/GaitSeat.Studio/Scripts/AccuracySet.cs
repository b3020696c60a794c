using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Made clips over the ranges the measures must hold in; the same for a seed on every machine.</summary>
public static class AccuracySet
{
    /// <summary>Every sixth clip is not a rising trot.</summary>
    private const int OtherGaitEvery = 6;

    private static readonly Gait[] Others = [Gait.Walk, Gait.SittingTrot, Gait.Canter, Gait.Halt];
    private static readonly double[] Rates = [25, 30, 50, 60];

    /// <param name="seed">Fixes every draw.</param>
    /// <param name="count">Number of clips, 1 or more.</param>
    public static IReadOnlyList<ClipScript> Scripts(int seed, int count = 24)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var noise = new SeededNoise(seed, stream: 10);
        return [.. Enumerable.Range(0, count).Select(i => Draw(noise, i))];
    }

    private static ClipScript Draw(SeededNoise noise, int index)
    {
        // Combinations no leg can ride are drawn again; the order of draws keeps this the same for a seed.
        while (true)
        {
            var script = DrawOnce(noise, index);
            try
            {
                _ = new Ride(script);
                return script;
            }
            catch (ArgumentException)
            {
                // Out of a leg's reach: next draw.
            }
        }
    }

    private static ClipScript DrawOnce(SeededNoise noise, int index)
    {
        var other = index % OtherGaitEvery == OtherGaitEvery - 1;
        var gait = other ? Others[index / OtherGaitEvery % Others.Length] : Gait.RisingTrot;
        var standing = index % 4 == 3;
        return new ClipScript
        {
            Seed = (int)(noise.Next() % 1_000_000) + 1,
            Gait = gait,
            Facing = index % 2 == 0 ? Facing.Right : Facing.Left,
            FrameRateHz = Rates[index % Rates.Length],
            DurationSeconds = standing ? 4 : gait == Gait.Walk ? 6 : 4.5,
            RiderHeightPx = standing ? noise.Between(200, 240) : noise.Between(200, 400),
            StatureCm = noise.Between(155, 185),
            ThighOverStature = noise.Between(0.230, 0.245),
            ShankOverStature = noise.Between(0.240, 0.250),
            StrideHz = gait is Gait.RisingTrot or Gait.SittingTrot ? noise.Between(1.2, 1.5) : null,
            RiseCm = noise.Between(3, 14),
            ThighSitDeg = noise.Between(30, 62),
            TrunkLeanDeg = noise.Between(0, 16),
            FootPitchDeg = noise.Between(0, 12),
            DriftSwingCm = noise.Between(0, 8),
            DriftOffsetCm = noise.Between(-6, 10),
            DriftPhase = noise.Uniform(),
            BounceCm = gait is Gait.RisingTrot or Gait.SittingTrot ? noise.Between(7, 9) : null,
            Camera = standing ? CameraWork.Static : CameraWork.Pan,
            CameraDistanceM = standing ? noise.Between(14, 18) : noise.Between(10, 12),
            ZoomChange = index % 5 == 4 ? noise.Between(-0.1, 0.15) : 0,
            YawDeg = standing ? noise.Between(-5, 5) : noise.Between(-15, 15),
            Look = Wardrobe.Pick(noise),
        };
    }
}
