using CsCheck;
using GaitSeat.Model;
using GaitSeat.Motion.Tests.Made;

namespace GaitSeat.Motion.Tests;

/// <summary>Laws that hold whatever the ride: seeded, a handful of rides each.</summary>
public sealed class LawTests
{
    private const string Seed = "0N0XIzNsQ0O2";
    private const int Rides = 5;

    private static readonly BodyLengths Lengths = new(LowerLegCm: 41);
    private static readonly MotionSettings Quick = new() { Uncertainty = new() { Draws = 8 } };

    private static readonly Gen<MadeRider> Riders =
        Gen.Select(Gen.Double[1.2, 1.55], Gen.Double[4, 13], Gen.Double[0, 1], Gen.Double[1, 5])
            .Select((hz, rise, phase, swing) => new MadeRider { StrideHz = hz, RiseCm = rise, Phase0 = phase, SwingCm = swing });

    private static readonly MadeCamera Camera = new() { Seconds = 4 };

    [Fact]
    public void ShiftInTime_ShiftsStridesAndNothingElse() =>
        Holds((film, before) =>
        {
            var after = Analyse(film with { TimeSeconds = [.. film.TimeSeconds.Select(t => t + 100)] });
            Alike(before, after, shiftSeconds: 100);
        });

    [Fact]
    public void Mirror_SwapsFacingOnly() =>
        Holds((film, before) =>
        {
            var mirrored = film with
            {
                Facing = [.. film.Facing.Select(_ => Facing.Left)],
                Points = [.. film.Points.Select(p => p with { XPx = [.. p.XPx.Select(x => film.WidthPx - x)] })],
                Trunk = film.Trunk with { XPx = [.. film.Trunk.XPx.Select(x => -x)] },
                Surroundings = film.Surroundings with { XPx = [.. film.Surroundings.XPx.Select(x => -x)] },
            };
            var after = Analyse(mirrored);
            Assert.All(after.Strides, s => Assert.Equal(Facing.Left, s.Facing));
            Alike(before, after);
        });

    [Fact]
    public void LargerPixels_LeaveAnglesDurationsAndCentimetresAlone() =>
        Holds((film, before) =>
        {
            double[] Twice(double[] v) => [.. v.Select(x => 2 * x)];
            var scaled = film with
            {
                WidthPx = 2 * film.WidthPx,
                HeightPx = 2 * film.HeightPx,
                Points = [.. film.Points.Select(p => p with { XPx = Twice(p.XPx), YPx = Twice(p.YPx) })],
                Trunk = film.Trunk with { XPx = Twice(film.Trunk.XPx), YPx = Twice(film.Trunk.YPx) },
                Surroundings = film.Surroundings with { XPx = Twice(film.Surroundings.XPx), YPx = Twice(film.Surroundings.YPx) },
            };
            Alike(before, Analyse(scaled));
        });

    [Fact]
    public void SteadyTrunkDrift_LeavesTheRiseAlone() =>
        Holds((film, before) =>
        {
            // 0.1 px a frame: 2 cm a second at this scale.
            var drifting = film with { Trunk = film.Trunk with { YPx = [.. film.Trunk.YPx.Select((y, i) => i == 0 ? 0 : y + 0.1)] } };
            Alike(before, Analyse(drifting), toleranceCm: 0.1);
        });

    private static void Holds(Action<Sightings, ClipMotion> law) =>
        Riders.Sample(rider =>
        {
            var film = Camera.Film(rider);
            var before = Analyse(film);
            Assert.NotEmpty(before.Strides);
            law(film, before);
        }, seed: Seed, iter: Rides, threads: 1);

    private static ClipMotion Analyse(Sightings film) => MotionAnalysis.Analyse(film, Lengths, Quick);

    private static void Alike(ClipMotion before, ClipMotion after, double shiftSeconds = 0, double toleranceCm = 1e-3)
    {
        Assert.Equal(before.Strides.Count, after.Strides.Count);
        foreach (var (a, b) in before.Strides.Zip(after.Strides))
        {
            Assert.Equal(a.StartSeconds + shiftSeconds, b.StartSeconds, toleranceCm);
            foreach (var measure in new[] { StrideMeasure.RiseHeightCm, StrideMeasure.OverStirrupRiseCm, StrideMeasure.StrideDuration, StrideMeasure.ThighAngleSit, StrideMeasure.KneeAngleTop, StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftOffsetCm, StrideMeasure.EarOffsetCm })
                Assert.Equal(a.Measures[measure].Value, b.Measures[measure].Value, toleranceCm);
        }
    }
}
