namespace GaitSeat.Vision.Flow;

/// <summary>What a fit believes beforehand and what it throws out, level-0 px.</summary>
/// <param name="GrowthSpread">Standard deviation of growth at one unit of length, px.</param>
/// <param name="TurnSpread">The same of turn.</param>
/// <param name="BendSpread">The same of bend; 0 = none.</param>
/// <param name="OutlierPx">Distance of half weight in the end.</param>
/// <param name="Precision">What the best window is good for, px: turns standard deviations into px.</param>
internal readonly record struct FitSettings(double GrowthSpread, double TurnSpread, double BendSpread, double OutlierPx, double Precision);
