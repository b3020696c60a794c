namespace GaitSeat.Vision.Flow;

/// <summary>When the search for a window ends.</summary>
/// <param name="Iterations">Most steps a level.</param>
/// <param name="SettledPx">A step shorter than this is the last, px of the level.</param>
/// <param name="FarthestPx">A window that strays farther than this on one level is lost, px of the level.</param>
internal readonly record struct MatchLimits(int Iterations, double SettledPx, double FarthestPx);
