namespace GaitSeat.Vision.Flow;

/// <summary>What moved between the frame before and this one.</summary>
/// <param name="Cut">The picture jumped: another camera or an edit. The steps are then still, not missing.</param>
/// <param name="Trunk">The patch of horse under the saddle.</param>
/// <param name="Surroundings">What stands still in the world, as it moves in the picture at the seat: the camera's motion.</param>
public readonly record struct FlowStep(bool Cut, MotionStep Trunk, MotionStep Surroundings);
