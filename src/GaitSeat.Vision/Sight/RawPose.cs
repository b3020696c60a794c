using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Points of one model in one frame, in the model's own order.</summary>
/// <param name="X">px of the picture.</param>
/// <param name="Y">px of the picture.</param>
/// <param name="Score">0..1, how sure the model is.</param>
public sealed record RawPoints(float[] X, float[] Y, float[] Score)
{
    public int Count => X.Length;

    public PointPx this[int point] => new(X[point], Y[point]);

    public static RawPoints OfCount(int count) => new(new float[count], new float[count], new float[count]);
}

/// <summary>What both models saw of the rider in one frame, both sides of the body.</summary>
/// <param name="Rider">The box they were shown, px.</param>
/// <param name="First">MoveNet's or the user's model's 17 COCO points.</param>
/// <param name="Second">BlazePose's 33 points; null where it was not run.</param>
public sealed record RawPose(BoxPx Rider, RawPoints First, RawPoints? Second);
