using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>Names of the body points as markers, with the rider's side: a horse that goes to the right shows the rider's right side.</summary>
internal static class MarkerNames
{
    internal static string Of(BodyPoint point, Facing facing)
    {
        var (near, far) = facing == Facing.Right ? ("R_", "L_") : ("L_", "R_");
        return point switch
        {
            BodyPoint.Nose => "NOSE",
            BodyPoint.FarShoulder => far + "SHOULDER",
            BodyPoint.FarHip => far + "HIP",
            _ => near + point.ToTerm().ToUpperInvariant(),
        };
    }
}
