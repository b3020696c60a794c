using GaitSeat.Model;
using GaitSeat.Motion.Sessions;

namespace GaitSeat.Motion.Tests.Sessions;

public sealed class ReinComparisonTests
{
    private static readonly SessionSettings Standard = new();

    private static LeftRightDifference Thigh(MadeSession ride, LeftRightBasis basis) =>
        ReinComparison.Of(ride.Strides, Standard).Single(d => d.Basis == basis && d.Measure == StrideMeasure.ThighAngleSit);

    private static MadeSession Both(int seed, int clipsASide, int strides, double right, Facing rightFacing)
    {
        var ride = new MadeSession(seed, Standard);
        for (var c = 0; c < clipsASide; c++) ride.Clip().Ride(strides).Clip().Ride(strides, right, -0.65 * right, "right", rightFacing);
        return ride;
    }

    [Theory]
    [InlineData(1, 10)]
    [InlineData(4, 6)]
    public void IntervalBetweenReins_HoldsTheTruth(int clipsASide, int strides)
    {
        var held = Enumerable.Range(1, 300).Count(seed =>
        {
            var found = Thigh(Both(seed, clipsASide, strides, 4, Facing.Left), LeftRightBasis.Rein);
            return Math.Abs(found.Difference.Value - 4) <= found.Difference.HalfWidth95;
        });
        Assert.InRange(held / 300.0, 0.90, 0.99);
    }

    [Fact]
    public void ManyStridesOfOneClip_TellLittleMoreThanTen()
    {
        var few = Thigh(Both(1, 1, 10, 0, Facing.Left), LeftRightBasis.Rein);
        var many = Thigh(Both(1, 1, 400, 0, Facing.Left), LeftRightBasis.Rein);
        Assert.InRange(many.Difference.StandardError / few.Difference.StandardError, 0.9, 1.05);
        Assert.Equal((1, 400), (many.ClipsRight, many.StridesRight));
    }

    /// <summary>The models' habit counts only where the two groups were seen from different sides.</summary>
    [Fact]
    public void HabitOfTheModels_IsAllowedForWhereSidesDiffer()
    {
        var oneSide = Thigh(Both(2, 2, 6, 0, Facing.Left), LeftRightBasis.Rein);
        var twoSides = Thigh(Both(2, 2, 6, 0, Facing.Right), LeftRightBasis.Rein);
        Assert.Equal(0, oneSide.SideBiasStandardError);
        Assert.Equal(Standard.SideShare * 3, twoSides.SideBiasStandardError, 1e-12);
        Assert.Equal(Math.Sqrt(Math.Pow(twoSides.Difference.StandardError, 2) + Math.Pow(1.5, 2)), twoSides.WithBias.StandardError, 1e-12);
    }

    [Fact]
    public void RightLessLeft_HasItsSign() => Assert.InRange(Thigh(Both(3, 6, 10, 15, Facing.Right), LeftRightBasis.Side).Difference.Value, 10, 20);

    [Fact]
    public void NothingOnOneRein_IsNoComparison()
    {
        var ride = new MadeSession(4, Standard).Clip().Ride(8).Clip().Ride(8, rein: "right", quality: "untrusted_turn");
        Assert.Empty(ReinComparison.Of(ride.Strides, Standard));
    }

    [Fact]
    public void SheetWithoutReins_ComparesSidesOnly()
    {
        var ride = new MadeSession(5, Standard).Clip().Ride(8, rein: null).Clip().Ride(8, rein: null, facing: Facing.Right);
        var found = ReinComparison.Of(ride.Strides, Standard);
        Assert.All(found, d => Assert.Equal(LeftRightBasis.Side, d.Basis));
        Assert.Equal([StrideMeasure.RiseHeightCm, StrideMeasure.ThighAngleSit, StrideMeasure.StirrupLengthIndex], found.Select(d => d.Measure));
    }
}
