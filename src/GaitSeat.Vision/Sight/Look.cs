namespace GaitSeat.Vision.Sight;

/// <summary>What the detector saw at one moment of the scouting pass.</summary>
public sealed record Look(double TimeSeconds, IReadOnlyList<Detection> Seen);
