namespace GaitSeat.Studio;

/// <summary>Bounds of the stride-to-stride variation, in standard deviations.</summary>
internal static class RideVariation
{
    public const double RiseClamp = 2;
}
