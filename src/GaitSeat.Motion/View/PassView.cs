namespace GaitSeat.Motion.View;

/// <summary>What one window of a pass by the camera shows.</summary>
/// <param name="AtSeconds">Its middle.</param>
/// <param name="GrowthPerSecond">Relative growth of the rider in the picture.</param>
/// <param name="GrowthSe">Its standard error.</param>
/// <param name="AcrossPxPerSecond">Speed forward against the surroundings.</param>
/// <param name="ZoomPerSecond">Relative growth of the surroundings at the seat.</param>
/// <param name="PanStretchPx2PerSecond">Growth of the surroundings at the seat that is the pan's, times the focal length squared.</param>
/// <param name="LegPx">Size of the rider.</param>
/// <param name="SeenDeg">Turn that near and far shoulder and hip show; NaN where none.</param>
internal readonly record struct PassView(
    double AtSeconds,
    double GrowthPerSecond,
    double GrowthSe,
    double AcrossPxPerSecond,
    double ZoomPerSecond,
    double PanStretchPx2PerSecond,
    double LegPx,
    double SeenDeg)
{
    /// <summary>Whether the rider gets along fast enough for growth to tell the turn.</summary>
    public bool Tells(ViewSettings settings) =>
        double.IsFinite(GrowthPerSecond) && AcrossPxPerSecond > settings.LeastLegsPerSecond * LegPx;
}
