using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Another gait from a time on. The change is made at the sit instant nearest to it, so that a rising spell begins and ends on the saddle.</summary>
/// <param name="AtSeconds">s from the first frame.</param>
public sealed record GaitChange(double AtSeconds, Gait Gait);

/// <summary>Leathers made shorter or longer while riding.</summary>
/// <param name="AtSeconds">Middle of the change, s from the first frame; best where the rider does not rise.</param>
/// <param name="ThighSitDeg">Thigh angle at the sit afterwards, deg.</param>
public sealed record StirrupChange(double AtSeconds, double ThighSitDeg);
