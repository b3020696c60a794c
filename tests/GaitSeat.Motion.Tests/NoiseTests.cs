using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

/// <summary>Points as models give them: 1 % of rider height of noise that hangs together over three frames, wild values, dropouts, jittering trunk.</summary>
public sealed class NoiseTests(ITestOutputHelper output)
{
    [Fact]
    public void NoisyPoints_KeepTheStridesAndTheIntervalsHoldTheTruth()
    {
        int strides = 0, found = 0, matched = 0, dropped = 0;
        var held = new Dictionary<StrideMeasure, List<bool>>();
        var errors = new Dictionary<StrideMeasure, List<double>>();
        for (var seed = 1; seed <= 10; seed++)
        {
            var rider = new MadeRider { RiseCm = 8, StrideHz = 1.22 + 0.03 * seed, Phase0 = 0.17 * seed };
            var camera = new MadeCamera { Seconds = 6, PxPerCm = 1.6 };
            var film = new ModelNoise { Seed = seed, PointShare = 0.01, DropoutsPerSecond = 0.02, BiasCm = 1.4 }.On(camera.Film(rider), 1.6);
            var motion = MotionAnalysis.Analyse(film, new(LowerLegCm: 41), new());
            var sits = rider.Sits(0, camera.FrameTimes[^1]).ToArray();
            strides += sits.Length - 1;
            found += motion.Strides.Count;
            dropped += motion.Spells.Sum(s => s.StridesDropped);
            foreach (var stride in motion.Strides)
            {
                var k = Array.FindIndex(sits, s => Math.Abs(s - stride.StartSeconds) < 0.08);
                if (k < 0 || k + 1 >= sits.Length || Math.Abs(sits[k + 1] - stride.EndSeconds) > 0.08) continue;
                matched++;
                Note(StrideMeasure.StrideDuration, 1 / rider.StrideHz);
                Note(StrideMeasure.RiseHeightCm, rider.RiseCm);
                Note(StrideMeasure.ThighAngleSit, StrideScore.ThighAt(rider, sits[k]));
                Note(StrideMeasure.StirrupDriftSwingCm, rider.SwingCm);

                void Note(StrideMeasure measure, double truth)
                {
                    var value = stride.Measures[measure];
                    if (value.IsMissing) return;
                    if (!held.TryGetValue(measure, out var list)) (held[measure], errors[measure]) = (list = [], []);
                    list.Add(Math.Abs(value.Value - truth) <= value.HalfWidth95);
                    errors[measure].Add(Math.Abs(value.Value - truth));
                }
            }
        }

        output.WriteLine($"{strides} strides, {found} found, {matched} matched, {dropped} dropped");
        foreach (var (measure, list) in held) output.WriteLine($"{measure}: held {100.0 * list.Count(h => h) / list.Count:F0} %, mean error {errors[measure].Average():F3}");
        Assert.True(matched >= 0.9 * found, $"{matched} of {found} strides found are true ones");
        Assert.True(matched + dropped >= 0.9 * strides, $"{matched} matched and {dropped} dropped of {strides}");
        Assert.All(held, pair => Assert.InRange(pair.Value.Count(h => h) / (double)pair.Value.Count, 0.85, 1));

        // Intervals that always hold would be of no use either: they are no wider than four mean errors and a bit.
        Assert.InRange(errors[StrideMeasure.RiseHeightCm].Average(), 0, 1.8);
        Assert.InRange(errors[StrideMeasure.ThighAngleSit].Average(), 0, 4);
        Assert.InRange(errors[StrideMeasure.StrideDuration].Average(), 0, 0.03);
    }

    [Fact]
    public void ATremblingWalk_IsNeverATrot()
    {
        for (var seed = 1; seed <= 8; seed++)
        {
            var rider = new MadeRider { Gait = Gait.Walk, StrideHz = 0.85 + 0.015 * seed, BounceCm = 3, SpeedCmS = 160, SwingCm = 1 };
            var film = new ModelNoise { Seed = seed, PointShare = 0.01 }.On(new MadeCamera { Seconds = 6 }.Film(rider), 1.7);

            Assert.Empty(MotionAnalysis.Analyse(film, BodyLengths.Unknown, new() { Uncertainty = new() { Draws = 8 } }).Strides);
        }
    }
}
