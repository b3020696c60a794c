using GaitSeat.Model;
using GaitSeat.Studio.Accuracy;

namespace GaitSeat.Studio.Tests.Accuracy;

/// <summary>The sign is that of the sightings: + with the near side ahead of the far one in the picture, whichever way the horse goes.</summary>
public sealed class TrueTurnTests
{
    [Theory]
    [InlineData(Facing.Right, 12)]
    [InlineData(Facing.Right, -12)]
    [InlineData(Facing.Left, 12)]
    [InlineData(Facing.Left, -12)]
    [InlineData(Facing.Left, 0)]
    public void Turn_ComesFromThePoints(Facing facing, double comesNearerDeg)
    {
        var truth = TruthOfARideTests.TruthOf(new ClipScript { Facing = facing, YawDeg = comesNearerDeg, DurationSeconds = 1 });

        // A horse that comes towards the camera shows its far side ahead of the near one. Perspective leaves 2 deg.
        Assert.All(truth.FrameRows, row => Assert.Equal(-row.YawDeg, TrueTurn.Of(row, facing), 2.0));
    }

    [Fact]
    public void NoPlacesInSpace_IsNotKnown()
    {
        var row = TruthOfARideTests.TruthOf(new ClipScript { DurationSeconds = 0.2 }).FrameRows[0];
        var flat = row with { Points = row.Points.ToDictionary(p => p.Key, p => p.Value with { Metres = null }) };

        Assert.True(double.IsNaN(TrueTurn.Of(flat, Facing.Right)));
    }
}
