namespace GaitSeat.Studio;

/// <summary>Where the helper stands: on the line of sight to a place the horse passes, before or beyond it.</summary>
internal static class BystanderPlace
{
    /// <summary>When in the clip the horse is in line with the helper, share of its length.</summary>
    private const double PassedAtShare = 0.42;
    private const double NearerShare = 0.72;
    private const double BeyondM = 2.2;

    public static Standing? Of(Ride ride, Stage stage)
    {
        var script = ride.Script;
        if (script.Bystander == Bystander.None) return null;
        var horse = stage.At(ride.At(PassedAtShare * script.DurationSeconds));
        var share = script.Bystander == Bystander.InFront ? NearerShare : 1 + BeyondM / horse.DistanceM;
        var (x, depth) = (share * horse.X, share * horse.Depth);
        var length = Math.Sqrt(x * x + depth * depth);
        // In profile, turned against the horse: whoever waits looks where it comes from.
        var side = horse.Facing == Model.Facing.Right ? -1 : 1;
        return Standing.At(x, depth, side * depth / length, -side * x / length);
    }
}
