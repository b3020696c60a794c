using GaitSeat.Model;
using GaitSeat.Motion.Sessions;

namespace GaitSeat.Motion.Tests.Sessions;

public sealed class ChangeFinderTests(ITestOutputHelper output)
{
    private const int Rides = 300;

    private static readonly SessionSettings Standard = new();

    /// <summary>Each ride draws its own layout: one clip with pauses, or several clips, of few strides or many.</summary>
    private static MadeSession Unchanged(int seed, double wander = 1, double rhythm = 0)
    {
        var layout = new Random(seed * 31 + 7);
        var ride = new MadeSession(seed, Standard) { Wander = wander, OwnRhythm = rhythm };
        var clips = layout.Next(1, 6);
        for (var c = 0; c < clips; c++)
        {
            ride.Clip().Ride(layout.Next(2, 14));
            for (var p = layout.Next(0, 3); p > 0; p--) ride.Pause(1 + 8 * layout.NextDouble()).Ride(layout.Next(2, 12));
        }

        return ride;
    }

    private int Alarms(SessionSettings settings, double wander, double rhythm, string what)
    {
        var alarms = Enumerable.Range(1, Rides).Count(seed => ChangeFinder.InSession(Unchanged(seed, wander, rhythm).Strides, settings).Count > 0);
        output.WriteLine($"{what}: {alarms} of {Rides} rides without a change were said to hold one");
        return alarms;
    }

    /// <summary>At a true rate of 5 %, 300 rides give more than 27 alarms in one of 1000 tries (binomial).</summary>
    [Theory]
    [InlineData(2.0)]
    [InlineData(0.0)]
    public void NoChange_IsSeldomSaidToBeOne(double pauseSeconds) =>
        Assert.InRange(Alarms(Standard with { PauseSeconds = pauseSeconds }, 1, 0, $"pause {pauseSeconds} s"), 0, 27);

    /// <summary>A rider whose thigh and index move against each other in a rhythm of their own is no change either.</summary>
    [Fact]
    public void RiderWithARhythm_IsSeldomSaidToChange() => Assert.InRange(Alarms(Standard, 1, 0.6, "rhythm 0.6"), 0, 27);

    /// <summary>Errors half as large again as the settings say: the sizes do not hold, and the rate is not the promised one, but stays bounded.</summary>
    [Fact]
    public void WilderErrorsThanTheSettingsKnow_GiveAFewAlarmsMore() => Assert.InRange(Alarms(Standard, 1.5, 0, "errors 1.5 times"), 0, 60);

    private static bool IsFound(IReadOnlyList<SessionStride> strides, int at, LengthChange direction)
    {
        var found = ChangeFinder.InSession(strides, Standard);
        return found.Count == 1 && found[0].Shift.Direction == direction && ReferenceEquals(found[0].Shift.After, strides[at].Stride);
    }

    /// <summary>Two to three holes: the studio's planted changes are 8 to 13 deg of thigh; 0.65 % of the index goes with a degree (computed from the drawn riders).</summary>
    [Theory]
    [InlineData(10, 3, 0.94)]
    [InlineData(10, 8, 0.97)]
    [InlineData(6, 8, 0.73)]
    [InlineData(4, 8, 0.38)]
    public void ChangeWithinAClip_IsFoundWhereItIs(double thighDeg, int stridesASide, double least)
    {
        var hits = Enumerable.Range(1, 200).Count(seed =>
        {
            var ride = new MadeSession(seed, Standard).Clip().Ride(stridesASide).Pause(6).Ride(stridesASide, thighDeg, -0.65 * thighDeg);
            return IsFound(ride.Strides, stridesASide, LengthChange.Shorter);
        });
        output.WriteLine($"{thighDeg} deg within a clip, {stridesASide}+{stridesASide} strides: {hits / 200.0:P0} found");
        Assert.True(hits / 200.0 >= least, $"{hits} of 200 found");
    }

    [Theory]
    [InlineData(1, 10, 0.42)]
    [InlineData(3, 10, 0.57)]
    public void ChangeBetweenClips_IsFoundWhereItIs(int clipsASide, double thighDeg, double least)
    {
        var hits = Enumerable.Range(1, 200).Count(seed =>
        {
            var ride = new MadeSession(seed, Standard);
            for (var c = 0; c < clipsASide; c++) ride.Clip().Ride(8);
            for (var c = 0; c < clipsASide; c++) ride.Clip().Ride(8, -thighDeg, 0.65 * thighDeg);
            return IsFound(ride.Strides, 8 * clipsASide, LengthChange.Longer);
        });
        output.WriteLine($"{thighDeg} deg between clips, {clipsASide}+{clipsASide} clips: {hits / 200.0:P0} found");
        Assert.True(hits / 200.0 >= least, $"{hits} of 200 found");
    }

    /// <summary>Half of the rides within a clip, half between clips. The interval of the thigh and of a rise that did not change, where the change was found.</summary>
    [Fact]
    public void IntervalOfTheEffect_HoldsTheTruth()
    {
        int found = 0, thigh = 0, rise = 0;
        for (var seed = 1; seed <= 300; seed++)
        {
            var ride = new MadeSession(seed, Standard).Clip().Ride(6);
            (seed % 2 == 0 ? ride.Pause(5) : ride.Clip()).Ride(6, 14, -9);
            if (ChangeFinder.InSession(ride.Strides, Standard) is not [var only]) continue;
            found++;
            if (Holds(only, StrideMeasure.ThighAngleSit, 14)) thigh++;
            if (Holds(only, StrideMeasure.RiseHeightCm, 0)) rise++;
        }

        output.WriteLine($"of {found} found, the interval held the thigh {thigh} times, the rise {rise} times");
        Assert.True(found > 250, $"{found} found");
        Assert.InRange(thigh / (double)found, 0.90, 0.99);
        Assert.InRange(rise / (double)found, 0.93, 1);
    }

    private static bool Holds(SessionShift found, StrideMeasure measure, double truth)
    {
        var difference = found.Shift.Effects.Single(e => e.Measure == measure).Difference;
        return Math.Abs(difference.Value - truth) <= difference.HalfWidth95;
    }

    [Fact]
    public void TwoChanges_AreBothFound()
    {
        var ride = new MadeSession(3, Standard).Clip().Ride(8).Pause(6).Ride(8, 14, -9).Pause(6).Ride(8);
        var found = ChangeFinder.InClip([.. ride.Strides.Select(s => s.Stride)], Standard);
        Assert.Equal([LengthChange.Shorter, LengthChange.Longer], found.Select(f => f.Direction));
        Assert.All(found, f => Assert.Equal((8, 8), (f.StridesBefore, f.StridesAfter)));
        Assert.All(found, f => Assert.InRange(f.ChanceProbability, 0.0009, 0.05));
    }

    /// <summary>Leathers move thigh angle and index against each other; what moves both alike is a view or a slipped point.</summary>
    [Fact]
    public void BothMeasuresUp_IsNoChangeOfLeathers() =>
        Assert.Empty(ChangeFinder.InSession(new MadeSession(4, Standard).Clip().Ride(8).Pause(6).Ride(8, 14, 9).Strides, Standard));

    [Theory]
    [InlineData("untrusted_turn", Facing.Left, "left")]
    [InlineData("good", Facing.Right, "left")]
    [InlineData("good", Facing.Left, "right")]
    public void StridesThatCannotBeCompared_AreNot(string quality, Facing facing, string rein) =>
        Assert.Empty(ChangeFinder.InSession(new MadeSession(5, Standard).Clip().Ride(8).Pause(6).Ride(8, 14, -9, rein, facing, quality).Strides, Standard));

    [Fact]
    public void TrotWithoutAPause_HoldsNoChange()
    {
        var strides = new MadeSession(6, Standard).Clip().Ride(8).Ride(8, 14, -9).Strides;
        Assert.Empty(ChangeFinder.InSession(strides, Standard));
        Assert.Single(ChangeFinder.InSession(strides, Standard with { PauseSeconds = 0 }));
    }

    [Fact]
    public void SameStrides_GiveTheSameAnswer()
    {
        var strides = new MadeSession(7, Standard).Clip().Ride(4).Pause(6).Ride(4, 10, -6).Strides;
        Assert.Equal(Only().Shift.ChanceProbability, Only().Shift.ChanceProbability);

        SessionShift Only() => Assert.Single(ChangeFinder.InSession(strides, Standard));
    }
}
